import type { World } from '../support/world.ts'

/** The parts of a JSON schema that our description uses. */
export type JsonSchema = {
  $ref?: string
  type?: string
  enum?: unknown[]
  const?: unknown
  format?: string
  minimum?: number
  maximum?: number
  exclusiveMinimum?: number
  minLength?: number
  maxLength?: number
  pattern?: string
  minItems?: number
  maxItems?: number
  items?: JsonSchema
  properties?: Record<string, JsonSchema>
  required?: string[]
  additionalProperties?: boolean | JsonSchema
  anyOf?: JsonSchema[]
  oneOf?: JsonSchema[]
}
type Parameter = {
  in: string
  name: string
  required?: boolean
  description?: string
  schema: JsonSchema
  $ref?: string
}
type Content = { content?: Record<string, { schema: JsonSchema }> }
export type Operation = {
  operationId?: string
  summary?: string
  parameters?: Parameter[]
  requestBody?: Content & { required?: boolean }
  responses: Record<string, Content>
  security?: Record<string, unknown[]>[]
}
export type OpenApi = {
  openapi: string
  info: { title: string; version: string }
  paths: Record<string, Record<string, Operation>>
  components: {
    schemas: Record<string, JsonSchema>
    parameters: Record<string, Parameter>
    securitySchemes: Record<string, unknown>
  }
}

export async function readOpenApi(world: World): Promise<OpenApi> {
  const answer = await world.app.inject({ url: '/api/v1/openapi.json', headers: { host: 'localhost:3000' } })
  const document: OpenApi = JSON.parse(answer.body)
  return document
}

export function operationOf(document: OpenApi, operationId: string): Operation {
  for (const methods of Object.values(document.paths))
    for (const operation of Object.values(methods)) if (operation.operationId === operationId) return operation
  throw new Error(`The description has no operation ${operationId}`)
}

/** The schema behind a reference into the document's components. */
export function resolved(document: OpenApi, schema: JsonSchema): JsonSchema {
  if (schema.$ref === undefined) return schema
  const name = schema.$ref.replace('#/components/schemas/', '')
  const found = document.components.schemas[name]
  if (!found) throw new Error(`The description refers to ${schema.$ref}, which it does not hold`)
  return resolved(document, found)
}
