import { FrontPage } from '@/features/session/FrontPage.tsx'

export default function Page() {
  return <FrontPage />
}
