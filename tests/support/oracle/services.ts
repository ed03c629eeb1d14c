import type { Household } from '@/lib/core/household'
import type { SystemFacts } from './filter'
import { type Service, yearlyServices } from './service'
import { condensateTasks, deviceTasks, outdoorTasks, padTasks } from './tasks'

/** Every task of a household but its filters'. */
export function servicesOf(home: Household, factsOf: (systemId: string) => SystemFacts, on: number): Service[] {
  const bySystem = home.systems.flatMap((system) => {
    const facts = { home, system, hours: factsOf(system.id).hours, on }
    return [...yearlyServices(facts), ...outdoorTasks(facts)]
  })
  const byDevice = home.devices.flatMap((device) => {
    const wants = device.kind === 'humidifier' ? 'heat' : 'cool'
    const system = home.systems.find((s) => (device.system ? s.id === device.system : s[wants]))
    if (!system) return deviceTasks(home, device, on)
    const facts = { home, system, hours: factsOf(system.id).hours, on }
    if (device.kind === 'humidifier') return padTasks(facts, device)
    if (device.kind === 'condensate-drain') return condensateTasks(facts, device)
    return deviceTasks(home, device, on)
  })
  return [...bySystem, ...byDevice]
}
