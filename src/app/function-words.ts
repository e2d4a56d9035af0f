/**
 * What the sewing functions say of themselves, in the page's language. A part of the page that shows it imports this
 * module, and so waits for it; in English there is nothing to wait for. What does not come stays English.
 */
import { spokenLanguage } from "../../functions/phrase.ts";

const spoken = spokenLanguage();
if (spoken) {
  const file = new URL(`languages/${spoken.tag}.functions.js`, document.baseURI).href;
  const words = await import(/* @vite-ignore */ file).catch((fault) => console.error(fault));
  Object.assign(spoken.phrases, words?.default);
}
