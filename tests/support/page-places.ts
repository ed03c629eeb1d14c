import type { Page } from 'playwright-core'
import { getFlow } from '@/content/guide/flows'
import { encodeWalk } from '@/lib/guide/address'
import { guideFacts } from '@/lib/guide/household-facts'
import { aHousehold } from './a-household'
import { EVERYBODY_DAY, EVERYBODY_NOW, minuteOf, type There, type Who } from './everybody-there'
import { walksToAll } from './guide-reach'
import { bringUnits, keepCard, press } from './page-deeds'

/** How a page is come to, and what it shows then. */
export interface Place {
  path: string
  /** What is done there before it is looked at: a form sent wrong, a file brought. Only a browser can. */
  deed?: (page: Page) => Promise<void>
  /** It shows nothing of its own: the start of the address that it leads on to. */
  leadsTo?: string
}

type Said = string | Place
export type Places = Partial<Record<Who, Said[]>>

const MINUTE = minuteOf(EVERYBODY_NOW)
const CARD = 'no.no.rent.yes.ducts.sticks.wall.floor.done.filter.measured.no.dark.no'
const SIZE = 'from=measured&w=15.5&h=24.5&d=0.75&u=in'

/** The search of the shortest walk to a node of a flow; of a home, with what is known of it. */
function walkTo(node: string, facts = {}): string {
  const walk = walksToAll(getFlow('no-heat'), facts, MINUTE).get(node)
  if (!walk) throw new Error(`no walk to ${node}`)
  return encodeWalk(walk)
}

/** Where each page of the app is looked at, by its route and by who looks. */
export function places({ home, bare, entry, brief, upload, tokens }: There): Record<string, Places> {
  const [own, empty] = [`/home/${home}`, `/home/${bare}`]
  const known = guideFacts(aHousehold(), null, null)
  const walk = 'building=Mill+House&on=2026-12-05&doer'
  return {
    '/': { nobody: ['/'], owner: [{ path: '/', leadsTo: '/homes' }] },
    '/account': { owner: ['/account'] },
    '/account/deleted': { nobody: ['/account/deleted'] },
    '/account/programs': { owner: ['/account/programs'] },
    '/account/reminders': { owner: ['/account/reminders'] },
    '/act/[token]': { nobody: [`/act/${tokens.act}`, '/act/over'] },
    '/address/[token]': { nobody: [`/address/${tokens.address}`] },
    '/b/[token]': { nobody: [`/b/${tokens.brief}`] },
    '/bring': { nobody: ['/bring', { path: '/bring', deed: press('Show what is due') }] },
    '/check': { nobody: ['/check'] },
    '/check/[flow]': {
      nobody: [
        '/check/no-heat',
        ...['heat-source', 'filter', 'start', 'wait', 'still-cold', 'stop-boom', 'emergency-co'].map(
          (node) => `/check/no-heat${walkTo(node)}`,
        ),
      ],
    },
    '/check/booklet': { nobody: ['/check/booklet'] },
    '/check/brief': {
      nobody: [`/check/brief${walkTo('still-cold')}&room=58`, `/check/brief${walkTo('still-cold')}&room=chilly`],
    },
    '/check/cleared': { nobody: ['/check/cleared', { path: '/check/cleared', deed: press('Record it') }] },
    '/check/emergency': { nobody: ['/check/emergency'] },
    '/check/offline': { nobody: ['/check/offline'] },
    '/check/trouble': { nobody: [`/check/trouble?at=${MINUTE}`], owner: [`/check/trouble?at=${MINUTE}`] },
    '/check/watch': {
      nobody: [
        '/check/watch',
        '/check/watch?w=calls.0_hum.5_light.40_silence.46_starts-over.60',
        '/check/watch?hum=soon&light=1:75',
      ],
    },
    '/confirm/[token]': { nobody: [`/confirm/${tokens.confirm}`] },
    '/describe': { newcomer: ['/describe'], owner: [{ path: '/describe', leadsTo: '/describe/home' }] },
    '/describe/[step]': {
      newcomer: [
        ...['home', 'people', 'system-1', 'filter-1-1', 'devices', 'check'].map((step) => `/describe/${step}`),
        '/describe/filter-1-1?shown=size',
        '/describe/devices?shown=more',
      ],
      owner: [{ path: '/describe/home', deed: press('Next') }],
    },
    '/f/[household]': { owner: [{ path: `/f/${home}`, leadsTo: own }] },
    '/f/[household]/[filter]': { owner: [{ path: `/f/${home}/hall`, leadsTo: `${own}/record/` }] },
    '/find': {
      nobody: [
        '/find',
        `/find?a=no.no&t=${MINUTE}`,
        `/find?a=${CARD}&t=${MINUTE}`,
        `/find?a=${CARD}&t=${MINUTE}&${SIZE}`,
        '/find?a=unsure',
      ],
    },
    '/find/kept': { nobody: ['/find/kept', { path: `/find?a=${CARD}&t=${MINUTE}&${SIZE}`, deed: keepCard }] },
    '/find/light': { nobody: ['/find/light'] },
    '/find/save': {
      owner: [`/find/save?a=${CARD}&${SIZE}`, `/find/save?a=${CARD}&${SIZE}&home=${home}`],
      newcomer: [`/find/save?a=${CARD}`],
    },
    '/forgot': { nobody: ['/forgot', { path: '/forgot', deed: press('Send me the link') }] },
    '/forgot/[token]': { nobody: [`/forgot/${tokens.forgot}`] },
    '/home/[household]': { owner: [own, empty], technician: [own] },
    '/home/[household]/away': { owner: [`${own}/away`] },
    '/home/[household]/brief/[brief]': { owner: [`${own}/brief/${brief}`] },
    '/home/[household]/check': { owner: [`${own}/check`] },
    '/home/[household]/check/[flow]': {
      owner: [`${empty}/check/no-heat`, `${empty}/check/no-heat${walkTo('still-cold', known)}`],
    },
    '/home/[household]/check/brief': { owner: [`${empty}/check/brief${walkTo('still-cold', known)}&room=58`] },
    '/home/[household]/check/clearance': { owner: [`${own}/check/clearance`] },
    '/home/[household]/check/emergency': { owner: [`${own}/check/emergency`] },
    '/home/[household]/check/trouble': {
      owner: [`${own}/check/trouble?at=${MINUTE}`, `${own}/check/trouble?at=${MINUTE}&system=main`],
    },
    '/home/[household]/check/watch': { owner: [`${own}/check/watch`] },
    '/home/[household]/details': { owner: [`${own}/details`, `${empty}/details`], technician: [`${own}/details`] },
    '/home/[household]/details/[...part]': {
      owner: ['contacts', 'climate', 'people', 'systems/main', 'filters/hall', 'filters/new', 'devices'].map(
        (part) => `${own}/details/${part}`,
      ),
    },
    '/home/[household]/filters/[filter]/label': { owner: [`${own}/filters/hall/label`] },
    '/home/[household]/find': { owner: [`${own}/find`] },
    '/home/[household]/log': { owner: [`${own}/log`, `${empty}/log`, `${own}/log?kind=put-off`] },
    '/home/[household]/log/[year]': { owner: [`${own}/log/2026`] },
    '/home/[household]/log/correct/[entry]': { owner: [`${own}/log/correct/${entry}`] },
    '/home/[household]/measured': { owner: [`${own}/measured`, `${empty}/measured`] },
    '/home/[household]/measured/[upload]': { owner: [`${own}/measured/${upload}`] },
    '/home/[household]/measured/bills': {
      owner: [`${own}/measured/bills`, { path: `${own}/measured/bills`, deed: press('Show what it comes to') }],
    },
    '/home/[household]/measured/happened': { owner: [`${own}/measured/happened`] },
    '/home/[household]/measured/hours': { owner: [`${own}/measured/hours`] },
    '/home/[household]/measured/meter': { owner: [`${own}/measured/meter`] },
    '/home/[household]/people': { owner: [`${own}/people`] },
    '/home/[household]/photos': { owner: [`${own}/photos`, `${empty}/photos`] },
    '/home/[household]/put-off/[task]/[subject]': { owner: [`${own}/put-off/change-filter/hall`] },
    '/home/[household]/record/[task]/[subject]': {
      owner: [
        `${own}/record/change-filter/hall`,
        `${own}/record/look-at-filter/hall`,
        `${own}/record/alarm-replace/smoke1`,
      ],
    },
    '/home/[household]/renters': { owner: [`${own}/renters`] },
    '/home/[household]/what-happened/[system]': { owner: [`${own}/what-happened/main`, `${empty}/what-happened/main`] },
    '/home/[household]/why/[filter]': { owner: [`${own}/why/hall`] },
    '/home/[household]/year': { owner: [`${own}/year`, `${empty}/year`] },
    '/homes': { landlord: ['/homes', '/homes?sort=pressing&state=overdue'], owner: ['/homes'] },
    '/homes/import': { landlord: ['/homes/import', { path: '/homes/import', deed: bringUnits }] },
    '/homes/learning': { landlord: ['/homes/learning'], owner: ['/homes/learning'] },
    '/homes/people': { landlord: ['/homes/people'] },
    '/homes/record': {
      landlord: [
        '/homes/record?building=Larkspur+Court',
        `/homes/record?building=Mill+House&task=change-filter&on=${EVERYBODY_DAY}`,
      ],
    },
    '/installation': { owner: ['/installation'] },
    '/invitation/[token]': { nobody: [`/invitation/${tokens.invitation}`, '/invitation/over'] },
    '/r': { renter: ['/r'] },
    '/r/ended': { nobody: ['/r/ended'] },
    '/r/photos': { renter: ['/r/photos'] },
    '/r/record/[task]/[subject]': { renter: ['/r/record/look-at-filter/hall'] },
    '/r/write': { renter: ['/r/write'] },
    '/rounds': { landlord: ['/rounds', '/rounds?closed=Christmas&notice=many'], technician: ['/rounds'] },
    '/rounds/walk': { landlord: [`/rounds/walk?${walk}=resident`] },
    '/sample': { nobody: ['/sample'] },
    '/sample/[household]': { nobody: ['/sample/wrenfield-road', '/sample/cove-lane'] },
    '/sample/[household]/what-happened/[system]': { nobody: ['/sample/wrenfield-road/what-happened/main'] },
    '/sign-in': { nobody: ['/sign-in', { path: '/sign-in', deed: press('Sign in') }] },
    '/sign-up': { nobody: ['/sign-up', `/sign-up?invitation=${tokens.signUp}`] },
    '/supplies': { landlord: ['/supplies'], owner: ['/supplies'] },
  }
}
