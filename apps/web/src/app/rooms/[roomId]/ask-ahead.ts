import { addressOf, type RouteId } from '@fryward/shared'
import { headers } from 'next/headers'
import { preload } from 'react-dom'

/**
 * Has the browser ask the API for answers while the page's scripts are still on their way; the page's own requests find
 * them. Only with a document: a page that is walked to has its scripts, and may know the answers.
 */
export async function askAhead(ids: readonly RouteId[], params: Record<string, string>): Promise<void> {
  const isDocument = (await headers()).get('accept')?.includes('text/html') ?? false
  if (!isDocument) return
  for (const id of ids) preload(addressOf(id, params), { as: 'fetch', crossOrigin: 'anonymous' })
}
