import swagger from '@fastify/swagger';
import reference from '@scalar/fastify-api-reference';
import type { FastifyInstance } from 'fastify';
import { jsonSchemaTransform } from 'fastify-type-provider-zod';

/** The OpenAPI document is made from the contracts; `/api/docs` shows it to people. */
export async function describeApi(app: FastifyInstance): Promise<void> {
  await app.register(swagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Escape Ledger',
        version: '1',
        description:
          'Record terminal failures, production and costs, and ask for the analyses. Send `Authorization: Bearer <token>`. A create takes an `Idempotency-Key`; a change needs `If-Match` with the version that was read. Errors are RFC 9457 problem documents.',
      },
      components: {
        securitySchemes: {
          token: { type: 'http', scheme: 'bearer' },
          session: { type: 'apiKey', in: 'cookie', name: 'escape_ledger_session' },
        },
      },
      security: [{ token: [] }, { session: [] }],
    },
    transform: jsonSchemaTransform,
  });
  app.get('/api/v1/openapi.json', { schema: { hide: true } }, async () => app.swagger());
  await app.register(reference, {
    routePrefix: '/api/docs',
    configuration: { url: '/api/v1/openapi.json', withDefaultFonts: false },
  });
}
