import { FrontPage } from '@/screens/front/FrontPage.tsx'

export default function Page() {
  return <FrontPage />
}
