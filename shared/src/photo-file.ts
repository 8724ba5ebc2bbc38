// Of the file of a photo itself; apart from the shapes of what is said of it, which a page that sends one needs not.
export const photoTypes = ['image/jpeg', 'image/png', 'image/webp'] as const
export const maximumPhotoBytes = 15 * 1024 * 1024
export const photoSizes = ['full', 'thumbnail'] as const
