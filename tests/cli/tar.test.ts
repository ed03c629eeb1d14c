import { spawnSync } from 'node:child_process'
import { Readable } from 'node:stream'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readTar, writeTar } from '@/lib/cli/tar'

test('whatever files are written as an archive are read back from it', async () => {
  const files = fc.array(
    fc.record({ name: fc.stringMatching(/^[a-z]{1,90}$/), content: fc.uint8Array({ maxLength: 2000 }) }),
    { maxLength: 5 },
  )
  await fc.assert(
    fc.asyncProperty(files, fc.integer({ min: 1, max: 700 }), async (given, piece) => {
      const parts: Uint8Array[] = []
      const source = given.map(({ name, content }) => ({ name, bytes: content.length, content: () => [content] }))
      for await (const part of writeTar(source)) parts.push(part)
      const packed = Buffer.concat(parts)
      const pieces = Array.from({ length: Math.ceil(packed.length / piece) }, (_, i) =>
        packed.subarray(i * piece, (i + 1) * piece),
      )
      const read: { name: string; content: Buffer }[] = []
      for await (const part of readTar(Readable.from(pieces))) {
        const last = read.at(-1)
        if (part.kind === 'file') read.push({ name: part.name, content: Buffer.alloc(0) })
        else if (last) last.content = Buffer.concat([last.content, part.chunk])
      }
      expect(read).toEqual(given.map(({ name, content }) => ({ name, content: Buffer.from(content) })))
    }),
  )
})

for (const bytes of [8 ** 11 - 1, 8 ** 11, 2 ** 40 + 1])
  test(`a file of ${bytes} bytes is announced as long as it is, to our reader and to tar itself`, async () => {
    const content = () => [new Uint8Array(1)]
    const { value } = await writeTar([{ name: 'plenum.db', bytes, content }]).next()
    const head = Buffer.from(value as Uint8Array)
    expect(head.length).toBe(512)
    expect((await readTar(Readable.from([head])).next()).value).toEqual({ kind: 'file', name: 'plenum.db', bytes })
    // GNU tar (or the system's own) says what it finds before it complains that the content is missing.
    const listed = spawnSync('tar', ['-tvf', '-'], { input: head, encoding: 'utf8' })
    expect(listed.stdout).toMatch(new RegExp(`\\b${bytes}\\b.*plenum\\.db`))
  })

test('a length that no number holds is no archive of ours', async () => {
  const { value } = await writeTar([{ name: 'plenum.db', bytes: 2 ** 50, content: () => [] }]).next()
  const head = Buffer.from(value as Uint8Array)
  head.fill(0x7f, 125, 136)
  head.write('        ', 148)
  head.write(
    `${head
      .reduce((sum, byte) => sum + byte, 0)
      .toString(8)
      .padStart(6, '0')}\0 `,
    148,
  )
  await expect(readTar(Readable.from([head])).next()).rejects.toThrow('more than files')
})
