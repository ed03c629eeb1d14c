import { z } from 'zod'
import { createDocument } from 'zod-openapi'
import { planSchema } from './plan-schema'

const problem = z
  .strictObject({ error: z.string().describe('What is wrong, and what to do, in one sentence.') })
  .meta({ id: 'Problem' })

const content = { 'application/json': { schema: problem } }
const etag = z.string().meta({ description: 'Names this answer; send it back as If-None-Match.' })

/** What programs may ask for, as OpenAPI 3.1; `address` is where this installation is reached. */
export function apiDocument(address: string): ReturnType<typeof createDocument> {
  return createDocument({
    openapi: '3.1.0',
    info: {
      title: 'Plenum for programs',
      version: '1',
      description:
        'Reads what is due. Make a token under Account, Programs. A token reads the plan of the homes its account sees and changes nothing.',
    },
    servers: [{ url: address }],
    paths: {
      '/api/v1/plan': {
        get: {
          operationId: 'plan',
          summary: 'What is due in the account’s open homes, when and why.',
          description:
            'The same JSON as the command `plan` prints for the exported household file. Ask as often as once a minute with If-None-Match: as long as nothing was written and no new day began, the answer is 304 and empty.',
          security: [{ token: [] }],
          requestParams: { header: z.object({ 'If-None-Match': z.string().optional() }) },
          responses: {
            '200': {
              description: 'The plan.',
              headers: z.object({ ETag: etag }),
              content: { 'application/json': { schema: planSchema } },
            },
            '304': { description: 'Nothing changed.', headers: z.object({ ETag: etag }) },
            '401': {
              description: 'No token, or one that is unknown or revoked.',
              headers: z.object({ 'WWW-Authenticate': z.string() }),
              content,
            },
            '429': {
              description: 'Too many questions with this token, or too many wrong ones from this address.',
              headers: z.object({ 'Retry-After': z.string().meta({ description: 'Seconds.' }) }),
              content,
            },
            '503': { description: 'The database does not answer. Ask again later.', content },
          },
        },
      },
      '/api/v1/openapi.json': {
        get: {
          operationId: 'openapi',
          summary: 'This document. It needs no token.',
          security: [],
          responses: {
            '200': { description: 'OpenAPI 3.1.', content: { 'application/json': { schema: z.looseObject({}) } } },
          },
        },
      },
    },
    components: { securitySchemes: { token: { type: 'http', scheme: 'bearer', description: 'plenum_…' } } },
  })
}
