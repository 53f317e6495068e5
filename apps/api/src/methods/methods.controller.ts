import type { MaterialView, MethodView, SaveMaterialBody, SaveMethodBody } from '#libs/contract/src/index.js';
import { Body, Controller, Get, Param, Post } from '@nestjs/common';
import { AnId } from '../exchange/an-id.js';
import { By } from '../platform/by.js';
import { Free } from '../platform/fields.js';
import { May } from '../platform/may.js';
import type { SignedIn } from '../platform/signed-in.js';
import { MethodsService } from './methods.service.js';

export class SaveMethodDto implements SaveMethodBody {
  @Free({
    about: 'The method whole. A known `id` gets its next version; requests keep the version they were agreed with.',
  })
  data: Record<string, unknown>;
}

export class SaveMaterialDto implements SaveMaterialBody {
  @Free({ about: 'The material whole, each strength band with its source and confidence.' })
  data: Record<string, unknown>;
}

@Controller()
export class MethodsController {
  constructor(private readonly methods: MethodsService) {}

  /** The newest version of every method that the lab offers. */
  @Get('methods')
  @May('see-methods')
  list(): Promise<MethodView[]> {
    return this.methods.offered();
  }

  @Get('methods/:id')
  @May('see-methods')
  view(@Param('id', AnId) id: string): Promise<MethodView & { versions: MethodView[] }> {
    return this.methods.view(id);
  }

  @Post('methods')
  @May('edit-methods')
  save(@Body() { data }: SaveMethodDto, @By() by: SignedIn): Promise<MethodView> {
    return this.methods.save(data, by);
  }

  @Get('materials')
  @May('see-methods')
  materials(): Promise<MaterialView[]> {
    return this.methods.materials();
  }

  @Post('materials')
  @May('edit-methods')
  addMaterial(@Body() { data }: SaveMaterialDto, @By() by: SignedIn): Promise<MaterialView> {
    return this.methods.addMaterial(data, by);
  }
}
