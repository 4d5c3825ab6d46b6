/** Links into the page's bench: those it is opened by, those that come later, and those that are pasted. */

import { isLink } from '../../files/link.ts';
import { SHIPPED } from '../../files/shipped.ts';
import { createLinkTaker, LINK_NOTICE } from '../../files/takeLink.ts';
import { documentStore, notices } from '../../state/bench.ts';
import { designs } from '../../state/designs.ts';
import { workRestored } from '../../state/keeping.ts';
import type { Notice } from '../../state/notices.ts';
import { elsewhere } from './elsewhere.ts';

/** The shipped model the work began with, as it is shipped. */
async function shippedBehind(origin: string) {
  const opening = await SHIPPED.find(({ file }) => file === origin)?.open();
  return opening?.ok ? [opening.model] : [];
}

async function isKept(): Promise<boolean> {
  await workRestored();
  const shipped = await shippedBehind(documentStore.getState().origin);
  const beside = designs.getState().kept.map(({ model }) => model);
  return elsewhere.holds(documentStore.getState(), [...shipped, ...beside]);
}

export const linkTaker = createLinkTaker({ documentStore, notices, isKept });

/** Takes the link out of the address: a reload would bring it again, over later work. */
function clearAddress(): void {
  if (!isLink(location.hash)) return;
  history.replaceState(history.state, '', location.pathname + location.search);
}

function speaks(list: readonly Notice[]): boolean {
  return list.some(({ key }) => key === LINK_NOTICE);
}

/** Takes the link in the address, now and whenever another comes. To be called once. */
export function followLinks(): void {
  const follow = () => void linkTaker.arrive(location.hash, clearAddress);
  addEventListener('hashchange', follow);
  // Until what is said of a link is put away, its question stands, and is asked again after a reload.
  notices.subscribe(({ list }, before) => {
    if (speaks(before.list) && !speaks(list)) clearAddress();
  });
  follow();
}
