/** The three looks and "as the system has it"; kept on this device only. */
export const looks = ['system', 'day', 'night', 'lights_out'] as const
export type Look = (typeof looks)[number]

export const lookStorageKey = 'fryward-look'
const changeEvent = 'fryward-look-change'

const isLook = (value: string | null): value is Look => looks.some((look) => look === value)

export function readLook(): Look {
  const kept = window.localStorage.getItem(lookStorageKey)
  return isLook(kept) ? kept : 'system'
}

/** The grounds of tokens.css, for what is painted before or outside of it: the empty page and the browser's own bars. */
const grounds = { day: '#f5efe2', night: '#0d151d', lights_out: '#000000' } as const

/** Puts a look on the page. The inline script in the document head does the same before the first paint. */
export function applyLook(look: Look): void {
  const root = document.documentElement
  const isDark =
    look === 'night' ||
    look === 'lights_out' ||
    (look === 'system' && window.matchMedia('(prefers-color-scheme: dark)').matches)
  root.setAttribute('data-mantine-color-scheme', isDark ? 'dark' : 'light')
  if (look === 'lights_out') root.setAttribute('data-look', 'lights-out')
  else root.removeAttribute('data-look')
  const ground = grounds[look === 'lights_out' ? look : isDark ? 'night' : 'day']
  root.style.backgroundColor = ground
  root.style.colorScheme = isDark ? 'dark' : 'light'
  for (const meta of document.querySelectorAll('meta[name="theme-color"]')) meta.setAttribute('content', ground)
}

export function keepLook(look: Look): void {
  window.localStorage.setItem(lookStorageKey, look)
  applyLook(look)
  window.dispatchEvent(new Event(changeEvent))
}

export function onLookChange(listener: () => void): () => void {
  const system = window.matchMedia('(prefers-color-scheme: dark)')
  const reapply = () => {
    applyLook(readLook())
    listener()
  }
  system.addEventListener('change', reapply)
  window.addEventListener(changeEvent, listener)
  window.addEventListener('storage', reapply)
  return () => {
    system.removeEventListener('change', reapply)
    window.removeEventListener(changeEvent, listener)
    window.removeEventListener('storage', reapply)
  }
}

/** Runs before the first paint, so that a dark room never sees a white flash, not even of a page without its styles. */
export const lookScript = `(function(){var r=document.documentElement,g=${JSON.stringify(grounds)};try{var l=localStorage.getItem('${lookStorageKey}');var d=l==='night'||l==='lights_out'||((!l||l==='system')&&matchMedia('(prefers-color-scheme: dark)').matches);r.setAttribute('data-mantine-color-scheme',d?'dark':'light');if(l==='lights_out')r.setAttribute('data-look','lights-out');r.style.backgroundColor=g[l==='lights_out'?l:d?'night':'day'];r.style.colorScheme=d?'dark':'light'}catch(e){r.setAttribute('data-mantine-color-scheme','light')}})()`
