import type { PlantedHome } from './planted-home'
import { PASSES, type Who } from './who-may'

/**
 * What a page asks of who looks: nothing · an account · a part in the home · the right to record in it · to host this ·
 * a renter's link, without which it says that there is none. The few that lead elsewhere say where, by who looks.
 */
export type Wall = 'open' | 'account' | 'home' | 'record' | 'administrator' | 'link' | Leads
type Leads = Partial<Record<Who, string>> & { others: string }

export interface Walked {
  wall: Wall
  /** What follows its path, where it shows something only so. */
  search?: string
  /** Names of planted words that the secret in its address shows to whoever holds it. */
  shows?: readonly string[]
}

const NEEDED = { account: 'account', home: 'see', record: 'member', administrator: 'administrator' } as const

/** What somebody is to get behind a wall. */
export function expectedAt(wall: Wall, who: Who): string {
  if (typeof wall === 'object') return wall[who] ?? wall.others
  if (wall === 'open') return 'shown'
  if (wall === 'link') return who === 'renter' ? 'shown' : 'no link'
  if (PASSES[NEEDED[wall]].includes(who)) return 'shown'
  return who === 'nobody' || who === 'renter' ? 'sign in' : 'nothing here'
}

const HOME = 'to the home'
const IN = { nobody: 'shown', renter: 'shown', others: 'to /' } as const
const member = (to: string) => Object.fromEntries(['technician', 'adult', 'manager', 'owner'].map((who) => [who, to]))

/** Every page there is, and its wall. One that is missing here fails the test: decide who may see it. */
export const PAGES: Record<string, Walked> = {
  '/': { wall: { nobody: 'shown', renter: 'shown', ...member(HOME), others: 'to /homes' } },
  '/account': { wall: 'account' },
  '/account/deleted': { wall: 'open' },
  '/account/programs': { wall: 'account' },
  '/account/reminders': { wall: 'account' },
  '/act/[token]': { wall: 'open', shows: ['name', 'building', 'owner’s name'] },
  '/address/[token]': { wall: 'open' },
  '/b/[token]': { wall: 'open', shows: ['page for the technician'] },
  '/bring': { wall: 'open' },
  '/check': { wall: 'open' },
  '/check/[flow]': { wall: 'open' },
  '/check/booklet': { wall: 'open' },
  '/check/brief': { wall: 'open' },
  '/check/cleared': { wall: 'open' },
  '/check/emergency': { wall: 'open' },
  '/check/offline': { wall: 'open' },
  '/check/trouble': { wall: 'open', search: '?at=now' },
  '/check/watch': { wall: 'open' },
  '/confirm/[token]': { wall: 'open' },
  '/describe': { wall: { nobody: 'sign in', renter: 'sign in', others: 'to /describe/home' } },
  '/describe/[step]': { wall: 'account' },
  // The code on a label: it says nothing of the home, and leads to where the walls stand.
  '/f/[household]': { wall: { renter: 'to /r', others: HOME } },
  '/f/[household]/[filter]': {
    wall: { renter: 'to /r/record/change-filter/hall', ...member('to its filter'), others: 'sign in' },
  },
  '/find': { wall: 'open' },
  '/find/kept': { wall: 'open' },
  '/find/light': { wall: 'open' },
  '/find/save': { wall: { nobody: 'sign in', others: 'shown' }, search: '?a=card' },
  '/forgot': { wall: 'open' },
  '/forgot/[token]': { wall: 'open' },
  '/home/[household]': { wall: 'home' },
  '/home/[household]/away': { wall: 'home' },
  '/home/[household]/brief/[brief]': { wall: 'home' },
  '/home/[household]/check': { wall: 'home' },
  '/home/[household]/check/[flow]': { wall: 'home' },
  '/home/[household]/check/brief': { wall: 'home' },
  '/home/[household]/check/clearance': { wall: 'home' },
  '/home/[household]/check/emergency': { wall: 'home' },
  '/home/[household]/check/trouble': { wall: 'home', search: '?at=now' },
  '/home/[household]/check/watch': { wall: 'home' },
  '/home/[household]/details': { wall: 'home' },
  '/home/[household]/details/[...part]': { wall: 'home' },
  '/home/[household]/filters/[filter]/label': { wall: 'home' },
  '/home/[household]/find': { wall: 'home' },
  '/home/[household]/log': { wall: 'home' },
  '/home/[household]/log/[year]': { wall: 'home' },
  '/home/[household]/log/correct/[entry]': { wall: 'record' },
  '/home/[household]/measured': { wall: 'home' },
  '/home/[household]/measured/[upload]': {
    wall: {
      nobody: 'sign in',
      renter: 'sign in',
      ...member('shown'),
      technician: 'to measured',
      others: 'nothing here',
    },
  },
  '/home/[household]/measured/bills': { wall: 'home' },
  '/home/[household]/measured/happened': { wall: 'home' },
  '/home/[household]/measured/hours': { wall: 'home' },
  '/home/[household]/measured/meter': { wall: 'home' },
  '/home/[household]/people': { wall: 'home' },
  '/home/[household]/photos': { wall: 'home' },
  '/home/[household]/put-off/[task]/[subject]': { wall: 'home' },
  '/home/[household]/record/[task]/[subject]': { wall: 'home' },
  '/home/[household]/renters': { wall: 'home' },
  '/home/[household]/what-happened/[system]': { wall: 'home' },
  '/home/[household]/why/[filter]': { wall: 'home' },
  '/home/[household]/year': { wall: 'home' },
  '/homes': { wall: 'account' },
  '/homes/import': { wall: 'account' },
  '/homes/learning': { wall: 'account' },
  '/homes/people': { wall: 'account' },
  '/homes/record': { wall: 'account' },
  '/installation': { wall: 'administrator' },
  '/invitation/[token]': { wall: 'open', shows: ['name', 'building', 'owner’s name'] },
  '/r': { wall: 'link' },
  '/r/ended': { wall: { others: 'no link' } },
  '/r/photos': { wall: 'link' },
  '/r/record/[task]/[subject]': { wall: 'link' },
  '/r/write': { wall: 'link' },
  '/rounds': { wall: 'account' },
  // A walk through homes of which one sees none looks like one that does not exist.
  '/rounds/walk': { wall: 'home', search: '?doer=technician&on=2027-12-01&home=HOME' },
  '/sample': { wall: 'open' },
  '/sample/[household]': { wall: 'open' },
  '/sample/[household]/what-happened/[system]': { wall: 'open' },
  '/sign-in': { wall: IN },
  '/sign-up': { wall: IN },
  '/supplies': { wall: 'account' },
}

/** The address of a page or route in the planted home. */
export function addressIn(path: string, { home, ids, tokens }: PlantedHome): string {
  const known: Record<string, string> = {
    household: path.startsWith('/sample') ? 'wrenfield-road' : home,
    token: path.startsWith('/b/') ? tokens.brief : path.startsWith('/act/') ? tokens.act : tokens.invitation,
    ...{ ...ids, filter: 'hall', system: 'main', year: '2026', task: 'change-filter', subject: 'hall' },
    ...{ '...part': 'contacts', step: 'home', flow: 'no-heat', secret: tokens.feed },
  }
  return path
    .replace(/^\/r\/\[token\]/, `/r/${tokens.renter}`)
    .replace(/\[([^\]]+)\]/g, (part, name: string) => known[name] ?? part)
}
