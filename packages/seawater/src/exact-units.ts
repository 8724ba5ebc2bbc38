/** Units that are so by definition, apart from `convert`, which knows every spelling and is long for a page. */
export const inchCm = 2.54 // exact, International Yard and Pound Agreement 1959
export const usGallonL = 3.785411784 // exact, 231 cubic inches
export const imperialGallonL = 4.54609 // exact, UK Units of Measurement Regulations 1995
export const poundG = 453.59237 // exact, International Yard and Pound Agreement 1959
export const fahrenheitPerC = 1.8 // exact

export const toFahrenheit = (celsius: number): number => celsius * fahrenheitPerC + 32
export const toCelsius = (fahrenheit: number): number => (fahrenheit - 32) / fahrenheitPerC
