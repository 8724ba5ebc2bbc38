import Link from 'next/link'

export default function NotFound() {
  return (
    <main style={{ padding: '2rem 1.2rem', display: 'grid', gap: '0.8rem' }}>
      <h1>No such page</h1>
      <p>The address leads nowhere here.</p>
      <p>
        <Link href="/rooms">Go to your rooms</Link>
      </p>
    </main>
  )
}
