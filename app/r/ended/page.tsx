import { LinkEnded } from '../link-ended'

type Props = { searchParams: Promise<Record<string, string | string[] | undefined>> }

export const metadata = { title: 'This link opens nothing' }

export default async function Page({ searchParams }: Props) {
  const { slow } = await searchParams
  return <LinkEnded isSlow={slow !== undefined} />
}
