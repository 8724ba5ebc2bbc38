import '@fontsource/atkinson-hyperlegible-next/400.css'
import '@fontsource/atkinson-hyperlegible-next/700.css'
import '@/base/look/tokens.css'
import '@/base/look/base.css'
import type { Metadata, Viewport } from 'next'
import type { ReactNode } from 'react'
import { lookScript } from '@/base/look/looks.ts'
import { Providers } from './providers.tsx'

export const metadata: Metadata = {
  title: { default: 'Fryward', template: '%s · Fryward' },
  description: 'What every animal in the room needs today, how much, and why.',
}

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  viewportFit: 'cover',
  // A keyboard on the screen pushes the sheet's foot up instead of lying over it.
  interactiveWidget: 'resizes-content',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f5efe2' },
    { media: '(prefers-color-scheme: dark)', color: '#0d151d' },
  ],
}

export default function RootLayout({ children }: { children: ReactNode }) {
  // The script below has set attributes on it before React looks: not a difference to warn of.
  return (
    <html lang="en" suppressHydrationWarning>
      <head>
        {/* Before the first paint: a hatch room must not see a white flash. A constant of ours, no user data. */}
        {/* biome-ignore lint/security/noDangerouslySetInnerHtml: a constant script, see looks.ts */}
        <script dangerouslySetInnerHTML={{ __html: lookScript }} />
      </head>
      <body>
        <Providers>{children}</Providers>
      </body>
    </html>
  )
}
