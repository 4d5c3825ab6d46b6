/**
 * A paper as it will be printed, in a frame that runs no script. Its style is adopted from here, not written into its
 * markup, so that the page's own policy need not allow written styles.
 */
import { type RefObject, useCallback, useEffect, useRef, useState } from 'react';
import { plainText } from '../../paper/markup.ts';
import { paperBody, paperStyle, type Sheet } from '../../paper/page.ts';
import { PAPER_SIZES, type PaperSize } from '../../paper/paperSize.ts';

/** CSS pixels in a mm, and the frame's own edges and scroll bar, px. */
const PIXELS = 96 / 25.4;
const EDGES = 48;

function dress(frame: HTMLIFrameElement, paper: PaperSize): void {
  const { contentWindow, contentDocument } = frame;
  if (contentWindow === null || contentDocument === null) return;
  const { CSSStyleSheet: Style } = contentWindow as Window & typeof globalThis;
  const style = new Style();
  style.replaceSync(paperStyle({ paper }));
  contentDocument.adoptedStyleSheets = [style];
}

interface PreviewProps {
  readonly frame: RefObject<HTMLIFrameElement | null>;
  readonly sheet: Sheet;
  readonly title: string;
  readonly paper: PaperSize;
  readonly isFullSize: boolean;
}

export function Preview({ frame, sheet, title, paper, isFullSize }: PreviewProps) {
  const room = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = room.current;
    if (element === null) return;
    const size = new ResizeObserver(() => setWidth(element.clientWidth));
    size.observe(element);
    return () => size.disconnect();
  }, []);
  const onLoad = useCallback(() => {
    if (frame.current !== null) dress(frame.current, paper);
  }, [frame, paper]);
  const natural = PAPER_SIZES[paper][0] * PIXELS + EDGES;
  const scale = isFullSize || width === 0 ? 1 : Math.min(1.5, width / natural);
  return (
    <div ref={room} className="papers-room">
      <iframe
        ref={frame}
        title={`Preview: ${sheet.title}`}
        sandbox="allow-same-origin allow-modals"
        srcDoc={`<!doctype html><html lang="en"><title>${plainText(title)}</title><body>${paperBody([sheet])}`}
        onLoad={onLoad}
        style={{
          width: natural,
          height: `${100 / scale}%`,
          transform: `scale(${scale})`,
        }}
      />
    </div>
  );
}
