import { once } from 'node:events'
import type { AddressInfo } from 'node:net'
import { type ParsedMail, simpleParser } from 'mailparser'
import { SMTPServer } from 'smtp-server'

export interface PostOffice {
  /** Its address, for `SMTP_URL`. */
  url: string
  /** Everything it took in, as an independent reader understands it. */
  mails: ParsedMail[]
  /** Answers the next recipients so, instead of taking them; null takes everything. */
  answer(reply: { code: number; say: string } | null): void
  /** Runs after a mail is taken in and before that is said. */
  beforeSaying(wait: () => Promise<void>): void
  close(): Promise<void>
}

/** A real mail server on the loopback. */
export async function openPostOffice(port = 0): Promise<PostOffice> {
  const mails: ParsedMail[] = []
  let reply: { code: number; say: string } | null = null
  let wait = async () => {}
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS', 'AUTH'],
    logger: false,
    onRcptTo(_address, _session, done) {
      done(reply ? Object.assign(new Error(reply.say), { responseCode: reply.code }) : null)
    },
    onData(stream, _session, done) {
      simpleParser(stream).then(async (mail) => {
        mails.push(mail)
        await wait()
        done()
      }, done)
    },
  })
  // A client that is killed in the middle is what some tests are about.
  server.on('error', () => {})
  server.listen(port, '127.0.0.1')
  await once(server.server, 'listening')
  const { port: taken } = server.server.address() as AddressInfo
  return {
    url: `smtp://127.0.0.1:${taken}`,
    mails,
    answer: (next) => {
      reply = next
    },
    beforeSaying: (next) => {
      wait = next
    },
    close: () => new Promise((resolve) => server.close(() => resolve())),
  }
}
