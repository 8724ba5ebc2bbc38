import { Button, createTheme, Input, type MantineColorsTuple } from '@mantine/core'
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

export const theme = createTheme({
  fontFamily: "'Atkinson Hyperlegible Next', system-ui, sans-serif",
  headings: { fontFamily: "'Atkinson Hyperlegible Next', system-ui, sans-serif" },
  primaryColor: 'deed',
  colors: { deed: everyShade('#0a625b') },
  defaultRadius: 'md',
  respectReducedMotion: true,
  components: {
    Button: Button.extend({ defaultProps: { size: 'md' }, classNames: { root: look.button } }),
    Input: Input.extend({ classNames: { input: look.input } }),
    InputWrapper: Input.Wrapper.extend({
      classNames: { label: look.label, description: look.description, error: look.error },
    }),
  },
})
