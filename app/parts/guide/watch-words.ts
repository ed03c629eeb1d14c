import type { StartupEvent } from '@/lib/guide/startup-watcher'

/** What a person hears, sees or feels from where they stand, every cover on. */
export const WATCH_WORDS: Record<StartupEvent, string> = {
  calls: 'The thermostat asks for heat',
  hum: 'A small fan hums',
  light: 'A glow or a soft whoosh',
  'warm-air': 'Warm air at a grille',
  'cool-air': 'Cool air at a grille',
  silence: 'All is silent',
  'starts-over': 'It starts over',
  bang: 'A bang or a boom',
}
