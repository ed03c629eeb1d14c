import { randomBytes } from 'node:crypto'
import sharp from 'sharp'
import { savePhoto } from '@/lib/data/photos'
import { AT } from '../moment'
import { say } from './say'

const [accountId = '', home = ''] = process.argv.slice(2)
const act = { viewer: { kind: 'account', accountId, name: 'ann', administrator: true }, at: AT, door: 'page' } as const
// Noise does not pack well: the file is large enough to be caught in the middle.
const raw = { width: 400, height: 300, channels: 3 } as const
for (let i = 0; ; i++) {
  const sent = await sharp(randomBytes(400 * 300 * 3), { raw })
    .png({ compressionLevel: 0 })
    .toBuffer()
  if (i === 1) say('begin')
  const saved = await savePhoto(act, home, { kind: 'filter', subject: 'hall', sent })
  if (saved.ok) say(`done ${saved.photo.id}`)
}
