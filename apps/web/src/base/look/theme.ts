import { createTheme, Input, type MantineColorsTuple } from '@mantine/core'
import look from './controls.module.css'

// Mantine wants ten shades; every one is the token, so that a look changes in one place (tokens.css).
const everyShade = (token: string): MantineColorsTuple => [
  token,
  token,
  token,
  token,
  token,
  token,
  token,
  token,
  token,
  token,
]

const fontFamily = "'Atkinson Hyperlegible Next', system-ui, sans-serif"

export const theme = createTheme({
  fontFamily,
  headings: { fontFamily },
  primaryColor: 'deed',
  colors: { deed: everyShade('#0a625b') },
  defaultRadius: 'md',
  respectReducedMotion: true,
  components: {
    Input: Input.extend({ classNames: { input: look.input } }),
    InputWrapper: Input.Wrapper.extend({
      classNames: { label: look.label, description: look.description, error: look.error },
    }),
  },
})
