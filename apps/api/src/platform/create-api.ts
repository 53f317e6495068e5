import { NestFactory } from '@nestjs/core';
import type { NestExpressApplication } from '@nestjs/platform-express';
import type { RequestHandler } from 'express';
import helmet from 'helmet';
import { Log } from '#libs/hosting/src/index.js';
import type { LabRecords } from '#libs/records/src/index.js';
import { AppModule } from '../app.module.js';
import type { ApiConfig } from '../config.js';
import { isSecure } from './cookies.js';
import { endpointsOf, refuseUnguarded } from './endpoints.js';
import { metricsOf } from './metrics.js';
import { PREFIX, WITHOUT_PREFIX } from './prefix.js';
import { servedDescription } from './served-description.js';
import { requestLog } from './request-log.js';
import { shapeCheck } from './validation.js';
import { webPage } from './web-page.js';

const LARGEST_JSON = '1mb';

/**
 * Makes the API with everything around it, not yet listening.
 *
 * @throws Error when an endpoint does not say who may use it
 */
export async function createApi(config: ApiConfig, records: LabRecords): Promise<NestExpressApplication> {
  const log = new Log(config.log, 'api');
  const options = { logger: log, bodyParser: false, abortOnError: false };
  const app = await NestFactory.create<NestExpressApplication>(AppModule.around(config, records, log), options);
  app.setGlobalPrefix(PREFIX, { exclude: [...WITHOUT_PREFIX] });
  app.set('trust proxy', config.proxies);
  app.set('etag', false);
  app.disable('x-powered-by');
  const metrics = metricsOf(records, config.metricsToken);
  app.use(requestLog(log), metrics.measure, helmet(headersFor(config)));
  app.use('/api', neverKept);
  app.useBodyParser('json', { limit: LARGEST_JSON, strict: true });
  app.useGlobalPipes(shapeCheck());
  refuseUnguarded(endpointsOf(app));
  const http = app.getHttpAdapter().getInstance();
  http.get(`/${PREFIX}/openapi.json`, servedDescription());
  http.get('/metrics', metrics.serve);
  for (const handler of webPage()) app.use(handler);
  return app;
}

/** Answers are about people and their work: no browser or proxy keeps them, unless an endpoint says that it may. */
const neverKept: RequestHandler = (_, response, next) => {
  response.setHeader('Cache-Control', 'no-store');
  next();
};

function headersFor(config: ApiConfig): Parameters<typeof helmet>[0] {
  const own = ["'self'"];
  const directives = {
    defaultSrc: own,
    scriptSrc: own,
    styleSrc: own,
    imgSrc: ["'self'", 'data:', 'blob:'],
    fontSrc: own,
    connectSrc: own,
    objectSrc: ["'none'"],
    baseUri: ["'none'"],
    formAction: own,
    frameAncestors: ["'none'"],
    upgradeInsecureRequests: isSecure(config) ? [] : null,
  };
  return {
    contentSecurityPolicy: { useDefaults: false, directives },
    strictTransportSecurity: isSecure(config),
    referrerPolicy: { policy: 'same-origin' },
  };
}
