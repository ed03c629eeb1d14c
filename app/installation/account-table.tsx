import type { AccountRow } from '@/lib/data/accounts'

/** Every account of the installation. */
export function AccountTable({ accounts }: { accounts: AccountRow[] }) {
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">Name</th>
          <th scope="col">E-mail</th>
          <th scope="col" className="number">
            Homes
          </th>
        </tr>
      </thead>
      <tbody>
        {accounts.map(({ id, name, email, administrator, households }) => (
          <tr key={id}>
            <th scope="row">
              {name}
              {administrator && <span className="hint"> administrator</span>}
            </th>
            <td>{email}</td>
            <td className="number">{households}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}
