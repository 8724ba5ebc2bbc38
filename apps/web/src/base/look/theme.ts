import { createTheme, Input } from '@mantine/core'
import look from './controls.module.css'

/** Fonts and colours are not here but in tokens.css, where a look changes in one place. */
export const theme = createTheme({
  respectReducedMotion: true,
  components: {
    Input: Input.extend({ classNames: { input: look.input } }),
    InputWrapper: Input.Wrapper.extend({
      classNames: { label: look.label, description: look.description, error: look.error },
    }),
  },
})
