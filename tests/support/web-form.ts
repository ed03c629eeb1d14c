import { request as plain } from 'node:http'
import { request as secured } from 'node:https'

export interface Sent {
  method?: string
  headers?: Record<string, string>
  body?: Buffer
  /** A certificate to be trusted. */
  ca?: Buffer
}

export interface Answered {
  status: number
  headers: Record<string, string | string[] | undefined>
  text: string
}

/** Asks an address as a program does, without following where it leads. */
export function ask(address: string, { method = 'GET', headers, body, ca }: Sent = {}): Promise<Answered> {
  return new Promise((resolve, reject) => {
    const options = { method, headers, ca, agent: false } as const
    const asked = (address.startsWith('https:') ? secured : plain)(address, options, (answer) => {
      const chunks: Buffer[] = []
      answer.on('data', (chunk) => chunks.push(chunk))
      answer.on('end', () =>
        resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text: Buffer.concat(chunks).toString() }),
      )
      answer.on('error', reject)
    })
    asked.on('error', reject)
    asked.end(body)
  })
}

/**
 * Fills in the form of a page that has a certain field, and sends it as a browser without JavaScript does: with the
 * hidden fields that the page gave it.
 */
export async function sendForm(
  address: string,
  typed: Record<string, string | File>,
  sent: Sent = {},
): Promise<Answered> {
  const page = await ask(address, sent)
  const field = Object.keys(typed)[0]
  const form = page.text.match(/<form\b[\s\S]*?<\/form>/g)?.find((found) => found.includes(`name="${field}"`))
  if (!form) throw new Error(`${address} answers ${page.status} and has no form with a field ${field}:\n${page.text}`)
  const data = new FormData()
  for (const [input] of form.matchAll(/<input\b[^>]*type="hidden"[^>]*>/g))
    data.append(attribute(input, 'name'), attribute(input, 'value'))
  for (const [name, value] of Object.entries(typed)) data.append(name, value)
  const encoded = new Response(data)
  return ask(address, {
    ...sent,
    method: 'POST',
    body: Buffer.from(await encoded.arrayBuffer()),
    headers: {
      origin: new URL(address).origin,
      ...sent.headers,
      'content-type': encoded.headers.get('content-type') ?? '',
    },
  })
}

function attribute(tag: string, name: string): string {
  const value = new RegExp(`\\b${name}="([^"]*)"`).exec(tag)?.[1] ?? ''
  return value
    .replace(/&quot;/g, '"')
    .replace(/&#x27;/g, "'")
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&')
}

/** What a person reads on a page. */
export function wordsOf({ text }: Answered): string {
  const body = text.replace(/<(script|style)\b[\s\S]*?<\/\1>/g, '').replace(/<[^>]+>/g, ' ')
  return body
    .replace(/&#x27;|’/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&amp;/g, '&')
    .replace(/\s+/g, ' ')
}
