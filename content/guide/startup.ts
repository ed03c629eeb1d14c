import type { StartupTable } from '@/lib/guide/startup-watcher'

/** The order of a gas furnace's start as seven manuals state it, from outside, every cover on. */
export const STARTUP: StartupTable = {
  bursts:
    'Warm air that you feel in bursts points to the air path or a limit. A flame that dies in seconds, with cool air, points to how the flame is sensed, or to the fuel.',
  stop: 'Stop. A bang is not normal. Set the thermostat to OFF and leave it off. Call a licensed technician today.',
  rows: [
    {
      event: 'calls',
      name: 'The thermostat asks for heat',
      fromSeconds: 0,
      toSeconds: 300,
      note: 'The screen shows it, or you hear a click. After a power cut it may take minutes.',
      sources: ['control-manuals'],
    },
    {
      event: 'hum',
      name: 'A small fan hums',
      fromSeconds: 0,
      toSeconds: 60,
      note: 'It clears old air. One maker allows five minutes before it gives up.',
      sources: ['control-manuals'],
    },
    {
      event: 'light',
      name: 'A glow or a soft whoosh',
      fromSeconds: 15,
      toSeconds: 120,
      note: 'The air is cleared for about 15 seconds. The part that lights warms for 5 to 54 seconds, by maker.',
      sources: ['control-manuals'],
    },
    {
      event: 'warm-air',
      name: 'Air at the grilles, cool and then warm',
      fromSeconds: 15,
      toSeconds: 150,
      note: 'The big fan waits 25 to 60 seconds. After a power cut one model blows cool air for 90 seconds first.',
      sources: ['control-manuals', 'practice'],
    },
  ],
  families: [
    {
      id: 'power',
      say: 'It may be the power supply or a safety that cuts the power.',
      overlaps: 'A cover that is not shut, or a full drain, looks the same.',
      sources: ['practice'],
    },
    {
      id: 'thermostat',
      say: 'It may be the thermostat or its batteries.',
      overlaps: 'No power to it looks the same.',
      sources: ['practice'],
    },
    {
      id: 'control',
      say: 'It may be the control power inside the unit.',
      overlaps: 'A safety that has opened looks the same.',
      sources: ['practice'],
    },
    {
      id: 'safety-wait',
      say: 'It may be in a wait: after failed tries many units rest for one to three hours.',
      overlaps: 'A control fault looks the same until the wait is over.',
      sources: ['control-manuals'],
    },
    {
      id: 'venting',
      say: 'It may be the vent or its pressure: snow, ice, wind or a full drain.',
      overlaps: 'A weak small fan looks the same.',
      sources: ['control-manuals', 'practice'],
    },
    {
      id: 'ignition',
      say: 'It may be what lights the flame, or the fuel supply.',
      overlaps: 'An outage of the gas company looks the same.',
      sources: ['control-manuals', 'practice'],
    },
    {
      id: 'flame-proving',
      say: 'It may be how the flame is sensed.',
      overlaps: 'Weak fuel and unsteady pressure look the same.',
      sources: ['control-manuals', 'practice'],
    },
    {
      id: 'fuel',
      say: 'It may be that the fuel is weak.',
      overlaps: 'A flame that is not sensed looks the same.',
      sources: ['practice'],
    },
    {
      id: 'limit',
      say: 'It may be a limit that stops the burner when it gets too hot.',
      overlaps: 'Low air flow, wind at the vent and a thermostat near a heater look the same.',
      sources: ['control-manuals', 'practice'],
    },
    {
      id: 'air-path',
      say: 'It may be the air path: the filter, shut grilles or ice.',
      overlaps: 'A unit that is too large for the ducts looks the same.',
      sources: ['practice'],
    },
    {
      id: 'blower',
      say: 'It may be the big fan.',
      overlaps: 'A blocked air path looks the same.',
      sources: ['practice'],
    },
  ],
}
