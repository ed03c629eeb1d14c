import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, resolve } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { ReactNode } from 'react'
import { renderToStaticMarkup } from 'react-dom/server'
import { ChoiceRows } from '@/app/parts/choice-rows'
import { DueList } from '@/app/parts/due-list'
import { ErrorSummary } from '@/app/parts/error-summary'
import { HazardText } from '@/app/parts/hazard-text'
import { LightChoice } from '@/app/parts/light-choice'
import { PlaceNav } from '@/app/parts/place-nav'
import { TextField } from '@/app/parts/text-field'
import { WhyDay } from '@/app/parts/why-day'
import { YearStrip } from '@/app/parts/year-strip'
import { SAMPLE_DAY, sampleFile } from '@/content/sample'
import { tables } from '@/content/tables'
import { effects as effectsOf } from '@/lib/core/effects'
import type { Household } from '@/lib/core/household'
import { planHousehold } from '@/lib/core/plan'
import type { Item, SystemYear } from '@/lib/core/plan-types'
import { peopleInWords } from '@/lib/core/words'
import { systemYears } from '@/lib/core/year'
import { crowdedYear, effects, items, ON, warnings, workings, wrenfield, year } from './plan-fixtures'

const require = createRequire(import.meta.url)

/** The compiled style sheet: imports put in place, fonts by their file address. */
export function styleSheet(file = resolve('app/globals.css')): string {
  return readFileSync(file, 'utf8')
    .replace(/@import ['"]([^'"]+)['"];/g, (_, path: string) =>
      styleSheet(path.startsWith('.') ? resolve(dirname(file), path) : require.resolve(path)),
    )
    .replace(/url\(([^)]+\.woff2)\)/g, (_, path: string) =>
      path.startsWith('file:') ? `url(${path})` : `url(${pathToFileURL(resolve(dirname(file), path))})`,
    )
}

const places = ['Due', 'Year', 'Check', 'Find', 'Log'].map((label) => ({
  href: `/${label.toLowerCase()}`,
  label,
  current: label === 'Due',
}))

function actions(item: Item): ReactNode {
  if (item.task !== 'change-filter') {
    return (
      <div className="buttons">
        <button type="button" className="main">
          Done today
        </button>
        <button type="button">Another day</button>
        <button type="button" className="quiet">
          Put off
        </button>
      </div>
    )
  }
  return (
    <form>
      <details open>
        <summary>Record the change</summary>
        <LightChoice />
        <div className="buttons">
          <button type="submit" className="main">
            Changed today
          </button>
          <button type="button" className="quiet">
            Put off
          </button>
        </div>
      </details>
    </form>
  )
}

/** What can be looked at, by name: a page of the parts each, as HTML. */
export const pages: Record<string, () => string> = {
  due: () =>
    page(
      <>
        <h1>{wrenfield.name}</h1>
        <p className="lead">3 people, 2 pets. One thing is overdue, one is due now.</p>
        <DueList
          household={wrenfield}
          items={items}
          on={ON}
          actions={actions}
          whyHref={({ lookOn }) => (lookOn ? '/why' : null)}
          warnings={warnings}
        />
      </>,
    ),
  nothing: () =>
    page(
      <>
        <h1>{wrenfield.name}</h1>
        <DueList household={wrenfield} items={[]} on={ON} />
      </>,
    ),
  why: () => {
    const item = items.find(({ subject }) => subject === 'hall')
    if (!item) throw new Error('the fixtures hold its filter')
    return page(
      <>
        <h1>Why this day?</h1>
        <WhyDay household={wrenfield} {...{ item, workings, effects, tables }} on={ON} />
      </>,
    )
  },
  year: () => yearPage(year),
  crowded: () => yearPage(crowdedYear),
  check: () =>
    page(
      <>
        <HazardText
          level={1}
          heading="Smell gas? Alarm sounding?"
          lines={['Everyone out now. Touch no switch.', 'Call 911 from outside, well away from the house.']}
        >
          <p>Only once you are outside and far from the house:</p>
          <p>
            <a className="button" href="tel:911">
              Call 911
            </a>
          </p>
        </HazardText>
        <form>
          <ChoiceRows
            name="burnt"
            legend="Is anything burnt, smoking or wet near the equipment?"
            hint="Look from where you stand. Open nothing."
            choices={[
              { value: 'no', label: 'No' },
              { value: 'yes', label: 'Yes', hint: 'Scorch marks, smoke, water on the floor' },
            ]}
          />
          <div className="buttons">
            <button type="submit" className="main">
              Go on
            </button>
          </div>
        </form>
      </>,
    ),
  form: () =>
    page(
      <>
        <h1>The filter</h1>
        <ErrorSummary
          faults={[
            { field: 'width', say: 'The width must be between 4 and 40 inches.' },
            { field: 'kind', say: 'Say what kind of filter it is.' },
          ]}
        />
        <form>
          <TextField
            id="width"
            label="Width"
            hint="The larger figure printed on the frame, or measured."
            fault="The width must be between 4 and 40 inches."
            defaultValue="160"
            inputMode="decimal"
            className="short"
          />
          <ChoiceRows
            name="kind"
            legend="What kind of filter is it?"
            fault="Say what kind of filter it is."
            choices={[
              { value: 'pleated', label: 'Pleated', hint: 'Folded paper or cloth in a card frame' },
              { value: 'washable', label: 'Washable', hint: 'Plastic or metal mesh that is rinsed' },
              { value: 'unknown', label: 'I don’t know', hint: 'We then assume pleated, MERV 8, and say so' },
            ]}
            chosen="unknown"
          />
          <div className="buttons">
            <button type="submit" className="main">
              Go on
            </button>
            <button type="submit">Leave it for later</button>
          </div>
        </form>
      </>,
    ),
}

// The sample homes with the plan that the model makes of them: what the parts will really be given.
for (const home of sampleFile(SAMPLE_DAY).households) pages[`sample ${home.id}`] = () => samplePage(home)

function samplePage(home: Household): string {
  const plan = planHousehold(home, tables, SAMPLE_DAY)
  return page(
    <>
      <h1>{home.name}</h1>
      <p className="lead">{peopleInWords(home)}.</p>
      <DueList household={home} items={plan.items} on={SAMPLE_DAY} warnings={plan.warnings} />
      {plan.workings.map((figures) => {
        const item = plan.items.find(({ subject }) => subject === figures.filter)
        return (
          item && (
            <WhyDay
              key={figures.filter}
              household={home}
              item={item}
              workings={figures}
              effects={effectsOf(home, figures.filter, tables, SAMPLE_DAY)}
              tables={tables}
              on={SAMPLE_DAY}
            />
          )
        )
      })}
      {systemYears(home, tables, SAMPLE_DAY).map((each) => (
        <section key={each.system}>
          <h2>The year of {each.name}</h2>
          <YearStrip household={home} year={each} on={SAMPLE_DAY} workings={plan.workings} />
        </section>
      ))}
    </>,
  )
}

function yearPage(shown: SystemYear): string {
  return page(
    <>
      <h1>The year of {shown.name}</h1>
      <YearStrip household={wrenfield} year={shown} on={ON} workings={[workings]} />
    </>,
  )
}

function page(children: ReactNode): string {
  const body = renderToStaticMarkup(
    <>
      <a className="skip" href="#main">
        Skip to the page
      </a>
      <header className="masthead">
        <a className="name" href="/">
          Plenum
        </a>
        <a href="/check">No heat? Smell gas?</a>
      </header>
      <PlaceNav places={places} home={{ name: wrenfield.name, href: '/due' }} />
      <main id="main" tabIndex={-1}>
        {children}
      </main>
      <footer className="colophon">
        <p>Smell gas, or hear a carbon monoxide alarm? Everyone out, touch nothing.</p>
      </footer>
    </>,
  )
  return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><title>Plenum</title><style>${styleSheet()}</style></head><body>${body}</body></html>`
}
