import swagger from '@fastify/swagger'
import type { FastifyInstance } from 'fastify'
import fp from 'fastify-plugin'
import { jsonSchemaTransform, jsonSchemaTransformObject } from 'fastify-type-provider-zod'
import { finishOpenApi } from './open-api-finish.ts'

/** The OpenAPI 3.1 document, generated from the schemas that the routes themselves are checked by. */
export const documentation = fp(
  async (app: FastifyInstance, { version }: { version: string }) => {
    await app.register(swagger, {
      openapi: {
        openapi: '3.1.0',
        info: { title: 'Fryward', version, description: 'The wire contract of a fish-breeding room.' },
        components: {
          securitySchemes: {
            session: { type: 'apiKey', in: 'cookie', name: 'fryward.session_token' },
            device: { type: 'http', scheme: 'bearer' },
          },
        },
      },
      transform: jsonSchemaTransform,
      transformObject: (document) => finishOpenApi(jsonSchemaTransformObject(document)),
    })
    app.get('/api/v1/openapi.json', { schema: { hide: true } }, async () => app.swagger())
  },
  { name: 'documentation' },
)
