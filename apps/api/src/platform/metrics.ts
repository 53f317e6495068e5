import { timingSafeEqual } from 'node:crypto';
import type { Request, RequestHandler } from 'express';
import { Gauge, Histogram, Registry, collectDefaultMetrics } from 'prom-client';
import { figuresOfOperation } from '#libs/records/src/index.js';
import type { LabRecords } from '#libs/records/src/index.js';

/** Figures for a monitoring system, in the Prometheus text format. */
export interface Metrics {
  measure: RequestHandler;
  serve: RequestHandler;
}

const STEPS_S = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5];

/** @param token lets others than this machine read; without one only this machine may */
export function metricsOf({ source, clock }: LabRecords, token: string | undefined): Metrics {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const took = new Histogram({
    name: 'lab_http_seconds',
    help: 'Time to answer',
    labelNames: ['method', 'route', 'status'],
    buckets: STEPS_S,
    registers: [registry],
  });
  const gauges = new Map<string, Gauge>();
  const show = (name: string, value: number) => {
    const gauge =
      gauges.get(name) ?? new Gauge({ name: `lab_${name}`, help: name.replaceAll('_', ' '), registers: [registry] });
    gauges.set(name, gauge);
    gauge.set(value);
  };
  return {
    measure: (request, response, next) => {
      const stop = took.startTimer();
      response.once('finish', () =>
        stop({ method: request.method, route: routeOf(request), status: response.statusCode }),
      );
      next();
    },
    serve: (request, response, next) => {
      if (!mayRead(request, token)) return void response.status(404).end();
      figuresOfOperation(source, clock.now())
        .then((figures) => Object.entries(figures).forEach(([name, value]) => show(name, value)))
        .then(() => registry.metrics())
        .then((text) => response.type(registry.contentType).send(text), next);
    },
  };
}

/** The path as in the code, so that ids do not make a series each. */
function routeOf(request: Request): string {
  return (request.route as { path?: string } | undefined)?.path ?? 'other';
}

function mayRead(request: Request, token: string | undefined): boolean {
  const given = request.headers.authorization;
  if (token && given?.length === token.length + 7)
    return timingSafeEqual(Buffer.from(given), Buffer.from(`Bearer ${token}`));
  const local = ['127.0.0.1', '::1', '::ffff:127.0.0.1'].includes(request.socket.remoteAddress ?? '');
  return local && request.headers['x-forwarded-for'] === undefined && given === undefined;
}
