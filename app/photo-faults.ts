/** The largest form that is read: what the server lets through at most (next.config.ts). */
export const MOST_BYTES = 12 * 1024 * 1024

/** Why a photo was not kept, and what to do. The word stands in the address of the page that says it. */
export const PHOTO_FAULTS = {
  'too-large': 'This file is larger than 12 MB. Take the photo with a smaller size, or crop it.',
  'cut-off': 'The upload was cut off, and nothing of it was kept. Send it again.',
  form: 'Choose a photo, and what it shows.',
  empty: 'This file is empty. Choose another.',
  'no-picture': 'This is no photo that we can read. Send a JPEG, PNG, WebP or AVIF picture.',
  broken: 'This picture is damaged and cannot be read to its end. Take or save it again.',
  'too-many-pixels': 'This picture has more than 64 million pixels. Take it with a smaller size.',
  'too-small': 'This picture is too small to show anything.',
  'no-subject': 'What the photo shows is not in this home any more. Choose again.',
  'too-many': 'This home holds as many photos as it may, or had many by links today. Take some away first, or wait.',
  closed: 'This home is closed: nothing can be added.',
  'not-allowed': 'Your part in this home does not include this. Ask whoever owns it here.',
  'not-found': 'There is no such photo here any more.',
} as const
export type PhotoFault = keyof typeof PHOTO_FAULTS
