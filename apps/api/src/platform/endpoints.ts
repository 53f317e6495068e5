import { RequestMethod } from '@nestjs/common';
import type { INestApplicationContext, Type } from '@nestjs/common';
import { METHOD_METADATA, PATH_METADATA } from '@nestjs/common/constants.js';
import { ModulesContainer } from '@nestjs/core';
import { ACCESS } from './may.js';
import type { Access } from './may.js';

export interface Endpoint {
  method: string;
  /** As in the code, e.g. `/requests/:id`. */
  path: string;
  /** Undefined where nobody said who may: such an endpoint does not start. */
  access: Access | undefined;
  handler: string;
}

/** Every endpoint of the application, from the code itself. */
export function endpointsOf(app: INestApplicationContext): Endpoint[] {
  const modules = [...app.get(ModulesContainer).values()];
  const controllers = new Set(
    modules.flatMap((module) => [...module.controllers.values()].map(({ metatype }) => metatype as Type)),
  );
  return [...controllers].flatMap(endpointsIn);
}

/** @throws Error naming every endpoint that does not say who may use it */
export function refuseUnguarded(endpoints: readonly Endpoint[]): void {
  const unguarded = endpoints.filter(({ access }) => access === undefined);
  if (unguarded.length === 0) return;
  throw new Error(`Say with @May or @Open who may use ${unguarded.map(({ handler }) => handler).join(', ')}.`);
}

function endpointsIn(controller: Type): Endpoint[] {
  const base = pathsOf(controller);
  const prototype = controller.prototype as Record<string, unknown>;
  return Object.getOwnPropertyNames(prototype).flatMap((name) => {
    const handler = Object.getOwnPropertyDescriptor(prototype, name)?.value as object | undefined;
    if (typeof handler !== 'function' || !Reflect.hasMetadata(METHOD_METADATA, handler)) return [];
    const method = RequestMethod[Reflect.getMetadata(METHOD_METADATA, handler) as number]!;
    const access = Reflect.getMetadata(ACCESS, handler) as Access | undefined;
    const paths = base.flatMap((first) => pathsOf(handler).map((second) => joined(first, second)));
    return paths.map((path) => ({ method, path, access, handler: `${controller.name}.${name}` }));
  });
}

function pathsOf(target: object): string[] {
  const path = Reflect.getMetadata(PATH_METADATA, target) as string | string[] | undefined;
  return [path ?? ''].flat();
}

function joined(first: string, second: string): string {
  return `/${[first, second].join('/')}`.replace(/\/+/g, '/').replace(/(.)\/$/, '$1');
}
