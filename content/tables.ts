import type { Tables } from '@/lib/core/tables'
import { commonSizes } from './common-sizes'
import { dustEvents, pets } from './dust'
import { figures } from './figures'
import { media, screens } from './media'
import { tasks } from './tasks'
import { zones } from './zones'

/** Version 1 of the model's tables: what every page and command passes to the calculations. */
export const tables: Tables = {
  version: 1,
  figures,
  dustEvents,
  pets,
  media,
  screens,
  zones,
  tasks,
  commonSizes: commonSizes.toSorted((a, b) => a.widthIn * a.heightIn - b.widthIn * b.heightIn),
}
