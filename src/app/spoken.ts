/** What a screen reader says of changes on the page: politely, and only once a text has stood still. */
import { useEffect, useRef, useState } from "react";

/**
 * A text for a region with the role of a status: "" at first, then each text that is not the one before
 * it and has stood for `still` milliseconds. What changes with every key is said once, at the end.
 */
export function useSaid(text: string, still = 1200): string {
  const [said, setSaid] = useState("");
  const last = useRef(text);
  useEffect(() => {
    if (text === last.current) return undefined;
    const timer = setTimeout(() => {
      last.current = text;
      setSaid(text);
    }, still);
    return () => clearTimeout(timer);
  }, [text, still]);
  return said;
}
