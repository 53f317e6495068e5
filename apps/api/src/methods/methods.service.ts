import { randomUUID } from 'node:crypto';
import type { MaterialView, MethodView } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput, refuseIfAny } from '#libs/errors/src/index.js';
import type { Material, Method } from '#libs/matching/src/index.js';
import { LabRecords, materialOf, methodOf, MethodRepository } from '#libs/records/src/index.js';
import type { MaterialEntity, MethodEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import { checkMaterial, checkMethod } from './check-method.js';

/** Methods and materials that the lab works with. */
@Injectable()
export class MethodsService {
  constructor(private readonly records: LabRecords) {}

  async offered(): Promise<MethodView[]> {
    return (await new MethodRepository(this.records.manager).offered()).map(methodView);
  }

  /** One version, with all the versions of the same method, newest first. @throws LabError `method/unknown` */
  async view(id: string): Promise<MethodView & { versions: MethodView[] }> {
    const methods = new MethodRepository(this.records.manager);
    const row = await methods.get(id);
    return { ...methodView(row), versions: (await methods.versionsOf(row.code)).map(methodView) };
  }

  /** Keeps a new method, or the next version of one that is known. @throws InvalidInput by field */
  save(data: Record<string, unknown>, by: SignedIn): Promise<MethodView> {
    refuseUnlessMethod(data);
    return this.records.act(by.id, async ({ manager, record, now }) => {
      const methods = new MethodRepository(manager);
      const version = ((await methods.versionsOf(data.id))[0]?.version ?? 0) + 1;
      const { id: code, designation, title, testType } = data;
      const row = { id: randomUUID(), code, version, designation, title, testType, state: 'offered' as const };
      await methods.add({ ...row, data: { ...data, version }, enteredBy: by.id, enteredAt: now() });
      await record({
        kind: 'method/version-added',
        subjectId: row.id,
        after: { code, version, data },
      });
      return methodView(await methods.get(row.id));
    });
  }

  async materials(): Promise<MaterialView[]> {
    return (await new MethodRepository(this.records.manager).materials()).map(materialView);
  }

  /** @throws InvalidInput by field, also when the library has a material of that name */
  addMaterial(data: Record<string, unknown>, by: SignedIn): Promise<MaterialView> {
    refuseUnlessMaterial(data);
    const { id: code, name, group } = data;
    return this.records.act(by.id, async ({ manager, record }) => {
      const methods = new MethodRepository(manager);
      if ((await methods.materials()).some((known) => known.code === code)) {
        const allowed = 'one that no other material has';
        throw new InvalidInput([fieldProblem({ field: 'data.id', found: code, allowed, unit: '' })]);
      }
      const id = randomUUID();
      await methods.addMaterial({ id, code, name, group, data });
      await record({
        kind: 'material/added',
        subjectId: id,
        after: data,
      });
      return materialView(await methods.getMaterial(id));
    });
  }
}

function refuseUnlessMethod(data: object): asserts data is Method {
  refuseIfAny(checkMethod(data));
}

function refuseUnlessMaterial(data: object): asserts data is Material {
  refuseIfAny(checkMaterial(data));
}

export function methodView(row: MethodEntity): MethodView {
  const { id, code, version, designation, title, testType, state } = row;
  return { id, code, version, designation, title, testType, state, data: methodOf(row) };
}

export function materialView(row: MaterialEntity): MaterialView {
  const { id, code, name, group, version } = row;
  return { id, code, name, group, data: materialOf(row), version };
}
