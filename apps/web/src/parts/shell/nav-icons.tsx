const paths = {
  today: 'M5 6.5h14M5 12h14M5 17.5h9',
  room: 'M4 5h16v14H4zM4 12h16M12 5v7M9 12v7',
  handOver: 'M4 8.5h11M11.5 4.5l4 4-4 4M20 15.5H9M12.5 11.5l-4 4 4 4',
  more: 'M5 12h.01M12 12h.01M19 12h.01',
  food: 'M3 17c3-9 6-9 9-5s6 4 9-6M3 20h18',
  people:
    'M9 11a3.2 3.2 0 1 0 0-6.4A3.2 3.2 0 0 0 9 11zM3 20c.5-4 3-6 6-6s5.5 2 6 6M16 5.2a3 3 0 0 1 0 5.6M17.5 14.4c2 .8 3.2 2.6 3.5 5.6',
  rules: 'M5 5h14v14H5zM8.5 9.5h7M8.5 14.5h4',
  settings: 'M4 7h9M17 7h3M4 17h3M11 17h9M15 7m-2 0a2 2 0 1 0 4 0a2 2 0 1 0-4 0M9 17m-2 0a2 2 0 1 0 4 0a2 2 0 1 0-4 0',
  survival: 'M4 5v14h16M7 8h4v3h4v4h4',
  pedigree: 'M12 4v6M6 20v-5h12v5M12 10v5M9.5 4h5M3.5 20h5M15.5 20h5',
  gauge: 'M4 16a8 8 0 1 1 16 0M12 16l4-5M4 19h16',
  add: 'M12 5v14M5 12h14',
} as const
export type NavIconName = keyof typeof paths

export function NavIcon({ name }: { name: NavIconName }) {
  return (
    <svg width="26" height="26" viewBox="0 0 24 24" aria-hidden="true">
      <path
        d={paths[name]}
        fill="none"
        stroke="currentColor"
        strokeWidth={name === 'more' ? 3.2 : 2}
        strokeLinecap="round"
        strokeLinejoin="round"
      />
    </svg>
  )
}
