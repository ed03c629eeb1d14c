import { useState } from 'react'
import { ChoiceRows } from '@/app/parts/choice-rows'
import { SelectField } from '@/app/parts/select-field'
import { TextField } from '@/app/parts/text-field'
import { choiceOf, fieldOf, type GroupProps } from './group'

/** Places and zones with what follows from each, in words. */
export interface ClimateChoices {
  stations: { id: string; name: string; follows: string }[]
  zones: { zone: number; name: string; follows: string }[]
}

const TIME_ZONES = [
  ['America/New_York', 'Eastern'],
  ['America/Chicago', 'Central'],
  ['America/Denver', 'Mountain'],
  ['America/Phoenix', 'Mountain, no daylight time (Arizona)'],
  ['America/Los_Angeles', 'Pacific'],
  ['America/Anchorage', 'Alaska'],
  ['Pacific/Honolulu', 'Hawaii'],
  ['America/Puerto_Rico', 'Atlantic (Puerto Rico)'],
  ['other', 'Another; I write its name below'],
]

const WAYS = [
  { value: 'station', label: 'By the nearest place in the list above' },
  {
    value: 'zone',
    label: 'In words: how cold and hot it gets',
    hint: 'None of the places is like mine, or I don’t know.',
  },
  { value: 'numbers', label: 'By degree-days that I have' },
]

interface PlaceFieldsProps extends GroupProps {
  climates: ClimateChoices
  /** The home has a climate by months, which may stay. */
  keepable?: boolean
}

/** What it is called, whose it is, and what weather it stands in. */
export function PlaceFields({ climates, keepable, ...group }: PlaceFieldsProps) {
  const [station, setStation] = useState(group.typed.station?.[0] ?? '')
  const follows = climates.stations.find(({ id }) => id === station)?.follows
  const way = choiceOf(group, 'way')
  const isOpen = way.chosen !== undefined && way.chosen !== 'station'
  const zone = group.typed['time-zone']?.[0] ?? ''
  const isOther = zone !== '' && !TIME_ZONES.some(([name]) => name === zone)
  return (
    <>
      <TextField
        id="name"
        label="What do you call this home?"
        hint="The street and number, or just “home”. It stands over the list."
        autoComplete="off"
        {...fieldOf(group, 'name')}
      />
      <ChoiceRows
        name="tenure"
        legend="Is it yours?"
        hint="It decides who is told to call whom: a renter calls the landlord about repairs."
        choices={[
          { value: 'own', label: 'I own it and live there' },
          { value: 'rent', label: 'I rent it' },
          { value: 'let', label: 'I let it to others' },
        ]}
        {...choiceOf(group, 'tenure')}
      />
      <SelectField
        id="station"
        label="Which of these has weather most like yours?"
        hint="From the weather follow the hours your equipment runs, and so when a filter is full. The figures are indicative, from memory; you can put in your own later."
        onChange={setStation}
        {...fieldOf(group, 'station')}
      >
        <option value="">None of these, or I don’t know</option>
        {climates.stations.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </SelectField>
      <p className="follows" aria-live="polite">
        {follows ?? ''}
      </p>
      <details open={isOpen}>
        <summary>None of these: tell it another way</summary>
        <ChoiceRows
          name="way"
          legend="How do you want to tell the climate?"
          choices={[...(keepable ? [{ value: 'keep', label: 'Leave the climate by months as it is' }] : []), ...WAYS]}
          {...way}
        />
        <ChoiceRows
          name="zone"
          legend="In words: which is most like it?"
          choices={[
            ...climates.zones.map(({ zone, name, follows }) => ({
              value: String(zone),
              label: name.charAt(0).toUpperCase() + name.slice(1),
              hint: follows,
            })),
            {
              value: 'unknown',
              label: 'I don’t know',
              hint: 'A mixed climate is reckoned with, and the plan says so.',
            },
          ]}
          {...choiceOf(group, 'zone')}
        />
        <TextField
          id="hdd"
          label="Heating degree-days in a year"
          hint="Base 65 °F (18.3 °C), as the weather service gives them."
          className="short"
          inputMode="decimal"
          {...fieldOf(group, 'hdd')}
        />
        <TextField
          id="cdd"
          label="Cooling degree-days in a year"
          className="short"
          inputMode="decimal"
          {...fieldOf(group, 'cdd')}
        />
        <TextField
          id="coldest"
          label="A cold winter night, degrees"
          hint="The design temperature for heating. Empty: one that goes with the degree-days."
          className="short"
          {...fieldOf(group, 'coldest')}
        />
        <TextField
          id="hottest"
          label="A hot summer afternoon, degrees"
          className="short"
          {...fieldOf(group, 'hottest')}
        />
      </details>
      <details open={isOther || zone !== ''}>
        <summary>Time zone, units and height above the sea</summary>
        <SelectField
          id="time-zone"
          label="Time zone"
          hint="A day here begins at its midnight. Left empty, it is the one of the place you chose."
          fault={fieldOf(group, 'time-zone').fault}
          defaultValue={isOther ? 'other' : zone}
        >
          <option value="">That of the place above</option>
          {TIME_ZONES.map(([name, words]) => (
            <option key={name} value={name}>
              {words}
            </option>
          ))}
        </SelectField>
        <TextField
          id="other-zone"
          label="Another time zone"
          hint="Its name in the world’s list, such as America/Boise or Europe/Berlin."
          {...fieldOf(group, 'other-zone')}
          defaultValue={isOther ? zone : (group.typed['other-zone']?.[0] ?? '')}
        />
        <ChoiceRows
          name="units"
          legend="Units"
          choices={[
            { value: 'us', label: 'Fahrenheit and feet' },
            { value: 'metric', label: 'Celsius and metres' },
          ]}
          {...choiceOf(group, 'units')}
        />
        <TextField
          id="elevation"
          label="Height above the sea, in feet or metres as chosen"
          hint="Thin air carries less heat. Empty: that of the place, or none."
          className="short"
          inputMode="decimal"
          {...fieldOf(group, 'elevation')}
        />
        <TextField
          id="building"
          label="Building, if it is one of several homes in it"
          {...fieldOf(group, 'building')}
        />
      </details>
    </>
  )
}
