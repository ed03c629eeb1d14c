import { Validator } from '@seriousme/openapi-schema-validator'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { SAMPLE_DAY, sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { plan } from '@/lib/core/plan'
import { planJson } from '@/lib/core/plan-json'
import { apiDocument } from '@/lib/forms/api-document'
import { planSchema } from '@/lib/forms/plan-schema'
import { anyCase } from '../support/any-household'

const document = apiDocument('https://plenum.example.org')

test('what programs may ask for is described in valid OpenAPI 3.1', async () => {
  const validator = new Validator()
  const checked = await validator.validate(JSON.parse(JSON.stringify(document)))
  expect([checked.valid, checked.errors, validator.version]).toEqual([true, undefined, '3.1'])
})

test('a description that is wrong is found', async () => {
  const broken = { ...JSON.parse(JSON.stringify(document)), paths: { 'api/v1/plan': { get: { responses: 7 } } } }
  expect((await new Validator().validate(broken)).valid).toBe(false)
})

test('it names the plan by its parts, every key of it required or not as it is printed', () => {
  const { components, paths, servers } = JSON.parse(JSON.stringify(document))
  expect(servers).toEqual([{ url: 'https://plenum.example.org' }])
  expect(Object.keys(paths)).toEqual(['/api/v1/plan', '/api/v1/openapi.json'])
  expect(paths['/api/v1/plan'].get.security).toEqual([{ token: [] }])
  expect(components.securitySchemes.token).toMatchObject({ type: 'http', scheme: 'bearer' })
  expect(Object.keys(components.schemas.Item.properties)).toContain('lookOn')
  expect(components.schemas.Item.required).not.toContain('lookOn')
  expect(components.schemas.Plan.additionalProperties).toBe(false)
})

test('the printed plan of any homes is what the description says', () => {
  const sample = plan(sampleFile(SAMPLE_DAY).households, tables, SAMPLE_DAY)
  expect(planSchema.parse(JSON.parse([...planJson(sample)].join('')))).toEqual(sample)
  fc.assert(
    fc.property(anyCase, ({ on, home }) => {
      const made = plan([home], tables, on)
      const text = [...planJson(made)].join('')
      const read = planSchema.safeParse(JSON.parse(text))
      expect(read.error?.issues ?? []).toEqual([])
    }),
    { numRuns: 60 },
  )
})
