import fc from 'fast-check'
import { expect, test } from 'vitest'
import { boundaryOf, CutOff, fileInForm } from '@/lib/forms/multipart-file'

async function* cut(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size)
}

async function fileOf(bytes: Uint8Array, boundary: string, size: number): Promise<Buffer> {
  const parts: Uint8Array[] = []
  for await (const part of fileInForm(cut(bytes, size), boundary)) parts.push(part)
  return Buffer.concat(parts)
}

async function sent(
  file: Uint8Array<ArrayBuffer>,
  before: [string, string][],
): Promise<{ bytes: Buffer; boundary: string }> {
  const form = new FormData()
  for (const [name, value] of before) form.append(name, value)
  form.append('file', new File([file], 'a "name".csv', { type: 'text/csv' }))
  form.append('after', 'more')
  const encoded = new Response(form)
  const boundary = boundaryOf(encoded.headers.get('content-type'))
  return { bytes: Buffer.from(await encoded.arrayBuffer()), boundary: boundary ?? '' }
}

test('the file of a form comes out byte for byte, however the form was cut up on its way', async () => {
  const content = fc.oneof(
    fc.uint8Array({ maxLength: 400 }),
    fc.string({ unit: fc.constantFrom('\r', '\n', '-', 'a', ',') }).map((text) => new TextEncoder().encode(text)),
  )
  const fields = fc.array(fc.tuple(fc.stringMatching(/^[a-z]{1,5}$/), fc.string({ maxLength: 20 })), { maxLength: 3 })
  await fc.assert(
    fc.asyncProperty(content, fields, fc.integer({ min: 1, max: 90 }), async (file, before, size) => {
      const { bytes, boundary } = await sent(Uint8Array.from(file), before)
      expect(await fileOf(bytes, boundary, size)).toEqual(Buffer.from(file))
    }),
    { numRuns: 300 },
  )
})

test('a form that ends in the middle is cut off, wherever that is', async () => {
  const { bytes, boundary } = await sent(new TextEncoder().encode('when,what\r\n1,2\r\n'), [['a', 'b']])
  const end = bytes.lastIndexOf('1,2') + 5
  for (let length = 0; length < end; length++)
    await expect(fileOf(bytes.subarray(0, length), boundary, 7), `after ${length}`).rejects.toBeInstanceOf(CutOff)
})

test('what is no form has no boundary; a form without a file has nothing', async () => {
  expect([null, 'text/csv', 'multipart/form-data', 'multipart/form-data; boundary="a b"'].map(boundaryOf)).toEqual([
    ...[null, null, null, 'a b'],
  ])
  const form = new FormData()
  form.append('a', 'b')
  const encoded = new Response(form)
  const boundary = boundaryOf(encoded.headers.get('content-type')) ?? ''
  expect(await fileOf(Buffer.from(await encoded.arrayBuffer()), boundary, 5)).toEqual(Buffer.from(''))
})
