import { createApiToken } from '@/lib/access/api-tokens'
import { acceptInvitation, createInvitation } from '@/lib/access/invite'
import { createRenterLink, openLink } from '@/lib/access/links'
import { currentViewer, type SessionCookie, signIn } from '@/lib/access/sign-in'
import { createAccountWith } from '@/lib/access/sign-up'
import { hashToken, newToken } from '@/lib/access/tokens'
import type { Act, Viewer } from '@/lib/core/viewer'
import { saveBrief, shareBrief } from '@/lib/data/briefs'
import { recordEpisode } from '@/lib/data/episodes'
import { importHouseholds } from '@/lib/data/import'
import { listLog } from '@/lib/data/log'
import { addMessage } from '@/lib/data/messages'
import { savePhoto } from '@/lib/data/photos'
import { saveContacts, saveNotes } from '@/lib/data/save-household'
import { spool } from '@/lib/data/spool'
import { signLink } from '@/lib/outbound/act-link'
import { createFeed } from '@/lib/outbound/feed'
import { sentWith } from './a-browser'
import { aHousehold } from './a-household'
import { aPicture } from './a-picture'
import { WHO, type Who } from './who-may'

const MEMBERS: readonly Who[] = ['technician', 'adult', 'manager', 'owner']
const HERE: readonly Who[] = ['renter', ...MEMBERS]
const WRITERS: readonly Who[] = ['adult', 'manager', 'owner']

/** Words that stand nowhere else, each with who may ever read it. */
export const PLANTED: Record<string, { word: string; for: readonly Who[] }> = {
  name: { word: 'Quillmark Two', for: HERE },
  building: { word: 'Quillmark Row', for: MEMBERS },
  'way in': { word: 'brassinger pot', for: MEMBERS },
  'contact’s name': { word: 'Oddvar Plumwick', for: MEMBERS },
  'contact’s phone': { word: '312 555 0147', for: MEMBERS },
  'contact’s e-mail': { word: 'plumwick@example.net', for: MEMBERS },
  'contact’s note': { word: 'zinnober before noon', for: MEMBERS },
  'note of a trouble': { word: 'heliotrope humming', for: MEMBERS },
  'page for the technician': { word: 'cormorant rattle', for: MEMBERS },
  'another renter’s words': { word: 'umbrage upstairs', for: WRITERS },
  'another renter’s name': { word: 'Unit Vermilion', for: WRITERS },
  'owner’s name': { word: 'Thessaly Owner', for: [...MEMBERS, 'administrator'] },
  'owner’s e-mail': { word: 'owner-at-home@example.org', for: [...WRITERS, 'administrator'] },
  'adult’s e-mail': { word: 'adult-at-home@example.org', for: [...WRITERS, 'administrator'] },
  'name of a program': { word: 'Kestrel kitchen', for: ['owner'] },
}

export interface PlantedHome {
  home: string
  cookies: Record<Who, SessionCookie[]>
  ids: { entry: string; brief: string; photo: string; upload: string }
  /** What opens a page by itself: whoever holds it may see what it shows. */
  tokens: Record<'brief' | 'invitation' | 'renter' | 'api' | 'feed' | 'act', string>
}

const PASSWORD = 'four words are enough'
// Where homes are made one after the other, the administrator stays who it was.
const emailOf = (who: Who, mark: string) => `${who === 'administrator' ? '' : mark}${who}-at-home@example.org`
const nameOf = (who: Who) => (who === 'owner' ? 'Thessaly Owner' : `Thessaly ${who}`)

/** A home full of planted words, with somebody of every kind, in the database that is in use. */
export async function aPlantedHome(mark = ''): Promise<PlantedHome> {
  const cookies = { nobody: [] } as unknown as Record<Who, SessionCookie[]>
  const acts = {} as Record<Who, Act>
  const at = new Date().toISOString()
  // The first account of an installation is its administrator.
  for (const who of ['administrator', ...WHO.filter((who) => !['nobody', 'renter', 'administrator'].includes(who))]) {
    const email = emailOf(who as Who, mark)
    if (mark === '' || who !== 'administrator')
      await createAccountWith({ email, password: PASSWORD, name: nameOf(who as Who) }, [])
    cookies[who as Who] = await signedInAs(who as Who, mark)
    const viewer = (await currentViewer(sentWith(cookies[who as Who]))) as Viewer
    acts[who as Who] = { viewer, at, door: 'page' }
  }
  const owner = acts.owner
  const [name, building] = ['Quillmark Two', 'Quillmark Row']
  const home = idOf(await importHouseholds(owner, [aHousehold({ name, building, tenure: 'rent' })]))
  for (const role of ['adult', 'manager', 'technician'] as const) {
    const invited = await createInvitation(owner, { kind: 'member', householdId: home, role })
    if (invited.ok) await acceptInvitation(acts[role], invited.token)
  }
  await saveNotes(owner, home, { accessNote: 'The key is in the brassinger pot' })
  const words = { name: 'Oddvar Plumwick', phone: '+1 312 555 0147', email: 'plumwick@example.net' }
  await saveContacts(owner, home, [{ id: 'c', kind: 'technician', ...words, note: 'zinnober before noon' }])
  const minute = Math.floor(Date.now() / 60_000)
  const event = {
    kind: 'trouble-began',
    on: at.slice(0, 10),
    minute,
    key: 'walk.0',
    note: 'heliotrope humming',
  } as const
  if (!(await recordEpisode(owner, home, [event])).ok) throw new Error('no trouble was written down')
  return { home, cookies, ...(await thingsIn(home, owner, cookies)) }
}

let signedIn = 0

/** Another session of somebody of a planted home; from an address of its own, for so many from one are refused. */
export async function signedInAs(who: Who, mark = ''): Promise<SessionCookie[]> {
  const headers = sentWith([], { 'x-forwarded-for': `192.0.2.${++signedIn % 250}` })
  const signed = await signIn(headers, { email: emailOf(who, mark), password: PASSWORD })
  if (!signed.ok) throw new Error(`${who} cannot sign in: ${signed.faults[0]?.say}`)
  return signed.cookies
}

async function thingsIn(home: string, owner: Act, cookies: Record<Who, SessionCookie[]>) {
  const place = { householdId: home, lastDay: '2099-01-01', expiresAt: '2099-01-02T00:00:00.000Z' }
  const link = await createRenterLink(owner, { ...place, name: 'Unit Celadon' })
  const other = await createRenterLink(owner, { ...place, name: 'Unit Vermilion' })
  if (!link.ok || !other.ok) throw new Error('no links')
  const [opened, theirs] = [await openLink(sentWith(), link.token), await openLink(sentWith(), other.token)]
  if (!opened.ok || !theirs.ok) throw new Error('a link does not open')
  cookies.renter = [opened.cookie]
  await addMessage({ ...owner, viewer: theirs.viewer, door: 'link' }, home, 'There is umbrage upstairs')
  const page = { title: 'Brief', sections: [{ heading: 'Urgency', lines: ['A cormorant rattle, today'] }] }
  const brief = idOf(
    await saveBrief(owner, home, { on: owner.at.slice(0, 10), page, severity: 2, outcome: null, roomF: 61, key: 'w' }),
  )
  const token = newToken()
  await shareBrief(owner, home, brief, { tokenHash: hashToken(token), expiresAt: place.expiresAt })
  const saved = await savePhoto(owner, home, { kind: 'filter', subject: 'hall', sent: await aPicture() })
  const spooled = await spool(home, chunksOf('Date,Heat minutes\n2026-10-01,120\n2026-10-02,130\n'), owner.at)
  const invited = await createInvitation(owner, { kind: 'member', householdId: home, role: 'adult' })
  const api = await createApiToken(owner, 'Kestrel kitchen')
  const feed = await createFeed(owner, home)
  const { viewer } = owner
  const act = signLink({
    accountId: viewer.kind === 'account' ? viewer.accountId : '',
    ...{ householdId: home, task: 'change-filter', subject: 'hall', button: 'done', issued: owner.at.slice(0, 10) },
  })
  const entry = (await listLog(owner.viewer, home))[0]?.id ?? ''
  if (!saved.ok || !invited.ok || !api.ok) throw new Error('a photo, an invitation or a token is missing')
  return {
    ids: { entry, brief, photo: saved.photo.id, upload: idOf(spooled) },
    tokens: {
      ...{ brief: token, invitation: invited.token, renter: link.token, api: api.token, act },
      feed: feed?.path.replace('/calendar/', '') ?? '',
    },
  }
}

async function* chunksOf(text: string) {
  yield Buffer.from(text)
}

function idOf(made: { ok: true; id: string } | { ok: true; ids: string[] } | { ok: false }): string {
  if (!made.ok) throw new Error('something of the planted home could not be made')
  return 'ids' in made ? (made.ids[0] ?? '') : made.id
}
