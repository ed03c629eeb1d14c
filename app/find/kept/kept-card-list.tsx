'use client'

import dynamic from 'next/dynamic'

/** The cards of this phone; what they are made of comes after the page. */
export const KeptCardList = dynamic(() => import('./phone-cards').then((module) => module.PhoneCards), {
  ssr: false,
  loading: () => <p>The cards are kept on the phone itself. To see them the browser has to run scripts.</p>,
})
