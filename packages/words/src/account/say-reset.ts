import type { SaidMessage } from '../gauges/say-message.ts'

type Asked = { name: string; link: string; publicUrl: string; address: string }

/** The mail with a link for a new password, to whoever has the account. */
export const sayReset = ({ name, link, publicUrl, address }: Asked): SaidMessage => ({
  title: 'A new password for Fryward',
  text: [
    `${name}, a new password was asked for at ${publicUrl}, from the address ${address}.`,
    `Choose it here, within an hour: ${link}`,
    'The link is good once. Every browser in which you are signed in is signed out then; a second factor stays as it is.',
    'If it was not you, leave this mail alone: nothing changes, and your password goes on as it is.',
  ].join('\n\n'),
})
