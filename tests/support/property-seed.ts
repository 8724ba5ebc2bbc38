import fc from 'fast-check'

// Made-up cases are the same at every run, so that what fails once fails again; `npm run properties` makes up others.
fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? 1) })
