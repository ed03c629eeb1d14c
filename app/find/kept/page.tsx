import { KeptCardList } from './kept-card-list'

export const metadata = { title: 'Cards kept on this phone' }

export default function Page() {
  return (
    <main id="main" tabIndex={-1} className="find">
      <h1>Cards kept on this phone</h1>
      <KeptCardList />
    </main>
  )
}
