import Link from 'next/link'

/** The ways in: what a person may want who comes here. */
export function FourDoors({ signedIn = false, fresh = false }: { signedIn?: boolean; fresh?: boolean }) {
  const doors = [
    {
      // Where nobody has an account yet, signing in would be a detour.
      href: fresh ? '/sign-up?next=%2Fdescribe' : '/describe',
      title: signedIn ? 'Describe another home' : 'Describe my home',
      say: signedIn
        ? 'Five minutes of questions. “Don’t know” is an answer.'
        : `Five minutes of questions, and you have your dates. “Don’t know” is an answer. ${fresh ? 'You make an account first; as the first one here, you also decide who else may.' : 'It is kept in an account of yours.'}`,
    },
    {
      href: '/check',
      title: 'A problem right now',
      say: 'No heat, no cooling, a smell, a noise: what to do, and whom to call. No account needed.',
    },
    {
      href: '/sample',
      title: 'Look around a sample home',
      say: 'Three invented homes with their lists and their year. Nothing to fill in.',
    },
    {
      href: '/bring',
      title: 'Bring a household file',
      say: 'A file that you saved here or on another installation, with everything in it.',
    },
  ]
  return (
    <ul className={signedIn ? 'doors small' : 'doors'}>
      {doors.map(({ href, title, say }) => (
        <li key={href}>
          <Link href={href} prefetch={false}>
            {title}
          </Link>
          <p>{say}</p>
        </li>
      ))}
    </ul>
  )
}
