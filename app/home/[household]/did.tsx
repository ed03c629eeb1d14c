import { sentenceOf } from '@/app/sentence-of'
import { undo } from './actions'
import { OneButton } from './one-button'

const SAYS = {
  recorded: 'Recorded. The days below are reckoned anew.',
  already: 'That was recorded already; it counts once.',
  completed: 'That day was recorded already; what was missing in it has been added.',
  differs: 'That day is recorded already with other details, which still stand. The log lets you correct it.',
  undone: 'Taken back. The log keeps both.',
  'put-off': 'Put off. You find it at the end of this page.',
  back: 'Brought back.',
  found: 'The filter card is saved. Whoever owns this home sees what changed.',
}

/** What has just been done, with a way back. */
export function Did({ id, did, entry }: { id: string; did: unknown; entry: unknown }) {
  const say = sentenceOf(SAYS, did)
  if (!say) return null
  return (
    <div className="notice" role="status">
      <p>{say}</p>
      {did === 'recorded' && typeof entry === 'string' && (
        <OneButton action={undo} fields={{ household: id, entry }}>
          Undo
        </OneButton>
      )}
    </div>
  )
}
