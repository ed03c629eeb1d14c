import { createDecipheriv, createHmac, type ECDH } from 'node:crypto'

/** Reads a notice as RFC 8291 describes it, with nothing but Node's own cryptography. */
export function readNotice(body: Buffer, { keys, secret }: { keys: ECDH; secret: Buffer }): unknown {
  const hmac = (key: Buffer, ...parts: (Buffer | string)[]) => {
    const hash = createHmac('sha256', key)
    for (const part of parts) hash.update(part)
    return hash.digest()
  }
  const salt = body.subarray(0, 16)
  const theirs = body.subarray(21, 21 + (body[20] ?? 0))
  const sealed = body.subarray(21 + (body[20] ?? 0))
  const one = Buffer.from([1])
  const shared = hmac(secret, keys.computeSecret(theirs))
  const input = hmac(shared, 'WebPush: info\0', keys.getPublicKey(), theirs, one)
  const prk = hmac(salt, input)
  const key = hmac(prk, 'Content-Encoding: aes128gcm\0', one).subarray(0, 16)
  const nonce = hmac(prk, 'Content-Encoding: nonce\0', one).subarray(0, 12)
  const open = createDecipheriv('aes-128-gcm', key, nonce)
  open.setAuthTag(sealed.subarray(-16))
  const plain = Buffer.concat([open.update(sealed.subarray(0, -16)), open.final()])
  return JSON.parse(plain.subarray(0, plain.lastIndexOf(2)).toString())
}
