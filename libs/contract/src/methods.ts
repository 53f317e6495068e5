import type { Material, Method } from '#libs/matching/src/index.js';

/** One version of a method, as the register keeps it; `data` is the matching core's `Method`. */
export interface MethodView {
  id: string;
  code: string;
  version: number;
  designation: string;
  title: string;
  testType: string;
  state: 'offered' | 'retired';
  data: Method;
}

/** The next version of a method, or a new one. */
export interface SaveMethodBody {
  data: Record<string, unknown>;
}

export interface MaterialView {
  id: string;
  code: string;
  name: string;
  group: string;
  data: Material;
  version: number;
}

export interface SaveMaterialBody {
  data: Record<string, unknown>;
}
