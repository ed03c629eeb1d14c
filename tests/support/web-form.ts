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
 * The form of a page that has a certain field, as a browser without JavaScript would send it before anything is typed:
 * with the hidden fields that the page gave it.
 */
export function formOf(page: Answered, field: string): FormData {
  const form = page.text.match(/<form\b[\s\S]*?<\/form>/g)?.find((found) => found.includes(`name="${field}"`))
  if (!form) throw new Error(`the page answers ${page.status} and has no form with a field ${field}:\n${page.text}`)
  const data = new FormData()
  for (const [input] of form.matchAll(/<input\b[^>]*type="hidden"[^>]*>/g))
    data.append(attribute(input, 'name'), attribute(input, 'value'))
  return data
}

/** A filled-in form as it goes over the line. */
export async function encoded(data: FormData): Promise<{ body: Buffer; type: string }> {
  const sent = new Response(data)
  return { body: Buffer.from(await sent.arrayBuffer()), type: sent.headers.get('content-type') ?? '' }
}

/** Fills in the form of a page that has a certain field, and sends it as a browser without JavaScript does. */
export async function sendForm(
  address: string,
  typed: Record<string, string | File>,
  sent: Sent = {},
): Promise<Answered> {
  const data = formOf(await ask(address, sent), Object.keys(typed)[0] ?? '')
  for (const [name, value] of Object.entries(typed)) data.append(name, value)
  const { body, type } = await encoded(data)
  const headers = { origin: new URL(address).origin, ...sent.headers, 'content-type': type }
  return ask(address, { ...sent, method: 'POST', body, headers })
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
