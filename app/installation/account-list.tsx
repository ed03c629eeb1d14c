import { plural } from '@/lib/core/day-words'
import type { AccountRow } from '@/lib/data/accounts'

/** Every account of the installation. */
export function AccountList({ accounts }: { accounts: AccountRow[] }) {
  return (
    <ul className="lines">
      {accounts.map(({ id, name, email, administrator, households }) => (
        <li key={id}>
          <p>
            <strong>{name}</strong>
            {administrator && ', administrator'}
          </p>
          <p>
            {email}, {plural(households, 'home')}
          </p>
        </li>
      ))}
    </ul>
  )
}
