import { passOutbox } from '@/lib/outbound/outbox'
import { openMailer } from '../open-mailer'
import { say } from './say'

say('begin')
const { ways, close } = openMailer()
const passed = await passOutbox(ways, () => process.env.AT ?? '')
close()
say(`sent ${passed.sent}`)
process.exit(0)
