import { notFound } from 'next/navigation'

/** Any address of a room that no page answers: said inside the room's own frame, by the not-found page beside it. */
export default function Page() {
  notFound()
}
