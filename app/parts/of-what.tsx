import type { ReactNode } from 'react'
import type { Household, Task } from '@/lib/core/household'
import { subjectInWords } from '@/lib/core/subject-words'
import { taskInWords } from '@/lib/core/words'

/**
 * What a link or button is about, for whoever hears it alone or in a list of all links: the eye has that from where it
 * stands. `I changed it<OfWhat>change the filter, wall grille</OfWhat>`
 */
export function OfWhat({ children }: { children: ReactNode }) {
  return <span className="visually-hidden">: {children}</span>
}

/** The same of one thing to do: “: change the filter, wall grille”. */
export function OfItem({ household, item }: { household: Household; item: { task: Task; subject: string } }) {
  return (
    <OfWhat>
      {taskInWords(item.task).toLowerCase()}, {subjectInWords(household, item.subject)}
    </OfWhat>
  )
}
