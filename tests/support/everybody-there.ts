import sharp from 'sharp'
import { tables } from '@/content/tables'
import { acceptInvitation, createInvitation } from '@/lib/access/invite'
import { createRenterLink } from '@/lib/access/links'
import { signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { hashToken, newToken } from '@/lib/access/tokens'
import type { Household } from '@/lib/core/household'
import { pooledHomes } from '@/lib/core/pooled-homes'
import type { Act, Viewer } from '@/lib/core/viewer'
import { saveBrief, shareBrief } from '@/lib/data/briefs'
import { saveDraft } from '@/lib/data/drafts'
import { recordEpisode } from '@/lib/data/episodes'
import { listLog } from '@/lib/data/log'
import { putOutLink } from '@/lib/data/mail-links'
import { addMessage } from '@/lib/data/messages'
import { savePhoto } from '@/lib/data/photos'
import { poolDust, startPooling } from '@/lib/data/pooled-dust'
import { putOff } from '@/lib/data/put-offs'
import { saveContacts, saveNotes } from '@/lib/data/save-household'
import { spool } from '@/lib/data/spool'
import { signLink } from '@/lib/outbound/act-link'
import { aHousehold } from './a-household'
import { DRAFT, TOLD, thermostatReport } from './everybody-homes'
import { fortyUnits } from './many-units'

/** The clock that the app of everybody's pages is held at. */
export const EVERYBODY_NOW = '2026-11-25T18:00:00Z'
export const EVERYBODY_DAY = '2026-11-25'
/** What that app is started with: its clock, and a mail server that is not there, so that pages offer mail. */
export const EVERYBODY_ENV = {
  PLENUM_NOW: EVERYBODY_NOW,
  SMTP_URL: 'smtp://127.0.0.1:9',
  MAIL_FROM: 'plenum@example.org',
}
const LATER = '2099-01-01T00:00:00.000Z'
const PASSWORD = 'four words are enough'

/** Who looks at a page: nobody signed in, the owner of a few homes, one who looks after forty, … */
export type Who = 'nobody' | 'owner' | 'landlord' | 'technician' | 'newcomer' | 'renter'
export type Cookies = { name: string; value: string }[]

/** What there is to look at, and the cookies of whoever may. */
export interface There {
  cookies: Record<Who, Cookies>
  /** A home with a long past; one with nothing but its description. */
  home: string
  bare: string
  entry: string
  brief: string
  upload: string
  tokens: Record<'act' | 'address' | 'confirm' | 'forgot' | 'invitation' | 'signUp' | 'brief', string>
}

async function account(name: string, homes: Household[]) {
  const email = `${name}@example.org`
  const made = await createAccountWith({ email, password: PASSWORD, name }, homes)
  if (!made.ok) throw new Error(made.faults[0]?.say)
  const signed = await signIn(new Headers({ 'x-forwarded-for': '127.0.0.1' }), { email, password: PASSWORD })
  if (!signed.ok) throw new Error(signed.faults[0]?.say)
  const viewer: Viewer = { kind: 'account', accountId: made.accountId, name, administrator: name === 'ann' }
  const act: Act = { viewer, at: '2026-11-25T17:00:00.000Z', door: 'page' }
  const cookies = signed.cookies.map((cookie) => ({ name: cookie.name, value: encodeURIComponent(cookie.value) }))
  return { accountId: made.accountId, ids: made.ids, viewer, act, cookies, email }
}

type Somebody = Awaited<ReturnType<typeof account>>

function done<T extends { ok: boolean }>(answer: T): Extract<T, { ok: true }> {
  if (!answer.ok) throw new Error(JSON.stringify(answer))
  return answer as Extract<T, { ok: true }>
}

/**
 * Fills the database of this process's environment (`besideApp`) with people and homes, so that every page has
 * something to show. The app beside it has its clock held at `EVERYBODY_NOW`, and sends mail.
 */
export async function everybodyThere(): Promise<There> {
  const bareHome = aHousehold({ id: 'bare', name: 'Dune Street 9', building: undefined, records: [], readings: [] })
  const ann = await account('ann', [TOLD, bareHome])
  const [home = '', bare = ''] = ann.ids
  const lee = await account('lee', fortyUnits())
  const tess = await account('tess', [])
  const nora = await account('nora', [])
  const technician = done(await createInvitation(ann.act, { kind: 'member', householdId: home, role: 'technician' }))
  done(await acceptInvitation(tess.act, technician.token))
  await saveDraft(nora.act, () => ({ step: 'check', answers: DRAFT }))
  await startPooling(lee.accountId)
  await poolDust(lee.accountId, EVERYBODY_DAY, (homes) => pooledHomes(homes, tables, () => EVERYBODY_DAY))
  const past = await aPast(ann, home)
  const place = { householdId: home, name: 'Unit 2', lastDay: '2099-01-01', expiresAt: LATER }
  const renter = done(await createRenterLink(ann.act, place))
  const invited = done(await createInvitation(ann.act, { kind: 'member', householdId: home, role: 'adult' }))
  const link = { task: 'change-filter', subject: 'hall', button: 'done', issued: EVERYBODY_DAY } as const
  return {
    cookies: {
      nobody: [],
      owner: ann.cookies,
      landlord: lee.cookies,
      technician: tess.cookies,
      newcomer: nora.cookies,
      renter: [{ name: 'plenum.renter', value: renter.token }],
    },
    ...{ home, bare, entry: past.entry, brief: past.brief, upload: past.upload },
    tokens: {
      act: signLink({ accountId: ann.accountId, householdId: home, ...link }),
      address: await mailLink(ann, 'address', 'ann.new@example.org'),
      confirm: await mailLink(ann, 'confirmation', ann.email),
      forgot: await mailLink(ann, 'recovery', ann.email),
      invitation: invited.token,
      signUp: done(await createInvitation(ann.act, { kind: 'sign-up' })).token,
      brief: past.shared,
    },
  }
}

/** What stands in a home's log, beside it and on its way to it. */
async function aPast(ann: Somebody, home: string) {
  const { act } = ann
  const grey = { create: { width: 800, height: 600, channels: 3, background: '#7a8a96' } } as const
  const sent = await sharp(grey).jpeg().toBuffer()
  for (const [kind, subject] of [
    ['filter', 'hall'],
    ['plate', 'main'],
  ] as const)
    done(await savePhoto(act, home, { kind, subject, sent }))
  done(await addMessage(act, home, 'It is 58 degrees here since noon.'))
  done(
    await putOff(act, home, { task: 'condensate-look', subject: 'drain', until: '2026-12-20', today: EVERYBODY_DAY }),
  )
  const contact = { id: 'c1', kind: 'technician', name: 'Northside Heating', phone: '555-0100' } as const
  done(await saveContacts(act, home, [{ ...contact, email: null, note: 'Mornings' }]))
  done(await saveNotes(act, home, { accessNote: 'Key at the desk', placeNotes: { hall: 'Behind the coats' } }))
  const event = { on: EVERYBODY_DAY, minute: minuteOf(EVERYBODY_NOW) - 60 }
  done(await recordEpisode(act, home, [{ kind: 'trouble-began', key: 'w.0', note: 'no-heat', ...event }]))
  done(await recordEpisode(act, home, [{ kind: 'start-spent', key: 'w.1', ...event }]))
  const page = {
    title: 'Brief for the technician',
    sections: [
      { heading: 'Urgency', lines: ['Today: no heat, and it is cold outside.'] },
      { heading: 'The home', lines: ['Larkspur Court 2', 'Gas furnace, central cooling'] },
    ],
  }
  const stored = { on: EVERYBODY_DAY, page, severity: 2, outcome: 'still-cold', roomF: 61, key: 'walk' } as const
  const brief = done(await saveBrief(act, home, stored)).id
  const shared = newToken()
  done(await shareBrief(act, home, brief, { tokenHash: hashToken(shared), expiresAt: LATER }))
  async function* report() {
    yield Buffer.from(thermostatReport())
  }
  const upload = done(await spool(home, report(), new Date().toISOString())).id
  const entry = (await listLog(ann.viewer, home))[0]?.id ?? ''
  return { brief, shared, upload, entry }
}

async function mailLink(to: Somebody, kind: 'address' | 'confirmation' | 'recovery', email: string): Promise<string> {
  const token = newToken()
  const link = { tokenHash: hashToken(token), kind, accountId: to.accountId, email, expiresAt: LATER }
  const mail = { subject: 'Plenum', text: 'A link', html: '<p>A link</p>', channel: 'mail', kind } as const
  await putOutLink(link, { ...mail, key: `${kind} test`, accountId: to.accountId, to: email, at: to.act.at })
  return token
}

/** Minutes since 1970, as the guide's addresses count them. */
export function minuteOf(instant: string): number {
  return Math.floor(Date.parse(instant) / 60_000)
}
