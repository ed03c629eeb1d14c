import { expect, test } from 'vitest'
import { settleForwarded, trustsProxy } from '@/lib/cli/forwarded.mjs'

function settled(headers: Record<string, string>, trustProxy: boolean) {
  const given: Record<string, string> = { host: 'home.example', ...headers }
  settleForwarded(given, '203.0.113.9', trustProxy)
  return given
}

test('without a proxy nothing that a visitor claims about himself is believed', () => {
  const claims = {
    forwarded: 'for=198.51.100.1',
    'x-real-ip': '198.51.100.1',
    'x-forwarded-for': '198.51.100.1',
    'x-forwarded-host': 'evil.example',
    'x-forwarded-proto': 'https',
    'x-forwarded-port': '443',
  }
  expect(settled(claims, false)).toEqual({ host: 'home.example', 'x-forwarded-for': '203.0.113.9' })
})

test('behind a proxy the address is the one that the proxy itself wrote, the last', () => {
  const headers = settled({ 'x-forwarded-for': 'made-up, 198.51.100.1', 'x-forwarded-proto': 'https' }, true)
  expect(headers['x-forwarded-for']).toBe('198.51.100.1')
  expect(headers['x-forwarded-proto']).toBe('https')
})

test('a proxy that writes no address leaves the connection’s', () => {
  expect(settled({}, true)['x-forwarded-for']).toBe('203.0.113.9')
})

test('a proxy is believed when it is named, or when the address is https, which only a proxy gives', () => {
  const NODE_ENV = 'test'
  expect(trustsProxy({ NODE_ENV })).toBe(false)
  expect(trustsProxy({ NODE_ENV, PUBLIC_URL: 'http://home.example' })).toBe(false)
  expect(trustsProxy({ NODE_ENV, PUBLIC_URL: 'https://home.example' })).toBe(true)
  expect(trustsProxy({ NODE_ENV, PUBLIC_URL: 'https://home.example', TRUST_PROXY: '0' })).toBe(false)
  expect(trustsProxy({ NODE_ENV, TRUST_PROXY: '1' })).toBe(true)
})
