import { element, partsOf } from './elements.js';

/** A place of the map: what is drawn of it, and what is told of it, a line each. */
interface Place {
  readonly mark: Element;
  readonly lines: readonly string[];
}

/** How near a pointer must come to a mark, CSS pixels, so that a finger hits it. */
const NEAR = 26;

/** Tells what stands at the places of a map, in the order of the route, by mouse, touch and keys. */
export function walkAlong(map: HTMLElement): void {
  const part = partsOf(map, 'map'),
    [ring, told, said] = [part('ring'), part('told'), part('said')],
    places = placesOf(map),
    order = [...places.keys()].sort((a, b) => a - b);
  let at: number | undefined;

  const hide = (): void => {
    at = undefined;
    ring.hidden = true;
    told.hidden = true;
  };
  const show = (key: number | undefined): void => {
    const place = key === undefined ? undefined : places.get(key);
    if (place === undefined || key === at) return;
    at = key;
    told.replaceChildren(...place.lines.map((line) => element('p', {}, line)));
    [ring.hidden, told.hidden] = [false, false];
    put(map, place.mark, ring, told);
    said.textContent = place.lines.join('. ');
  };
  map.addEventListener('pointermove', (event) => {
    if (event.pointerType === 'mouse') show(placeAt(event, places));
  });
  map.addEventListener('click', (event) => {
    if (told.contains(event.target as Node)) return;
    const key = placeAt(event, places);
    if (key === undefined) hide();
    else show(key);
  });
  map.addEventListener('pointerleave', (event) => {
    if (event.pointerType === 'mouse' && document.activeElement !== map) hide();
  });
  map.addEventListener('blur', hide);
  window.addEventListener('resize', hide);
  document.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') hide();
  });
  map.addEventListener('keydown', (event) => {
    const now = at === undefined ? -1 : order.indexOf(at),
      last = order.length - 1,
      next = {
        ArrowRight: now + 1,
        ArrowDown: now + 1,
        ArrowLeft: now < 0 ? last : now - 1,
        ArrowUp: now < 0 ? last : now - 1,
        Home: 0,
        End: last,
      }[event.key];
    if (next === undefined) return;
    event.preventDefault();
    show(order[Math.min(last, Math.max(0, next))]);
    told.scrollIntoView({ block: 'nearest' });
    ring.scrollIntoView({ block: 'nearest' });
  });
}

/** By their place in the route; their titles are taken out, so that nothing is told twice. */
function placesOf(map: HTMLElement): Map<number, Place> {
  const places = new Map<number, Place>();
  for (const mark of map.querySelectorAll('[data-place]')) {
    const title = mark.querySelector(':scope > title');
    if (title === null) continue;
    places.set(Number(mark.getAttribute('data-place')), {
      mark,
      lines: title.textContent.split('\n'),
    });
    title.remove();
  }
  return places;
}

/** What is pointed at: a mark or its text, else the nearest mark. */
function placeAt(event: MouseEvent, places: ReadonlyMap<number, Place>): number | undefined {
  const own = (event.target as Element).closest('[data-place]')?.getAttribute('data-place');
  if (own !== null && own !== undefined) return Number(own);
  let best: number | undefined,
    nearest = NEAR;
  for (const [key, { mark }] of places) {
    const { left, right, top, bottom } = mark.getBoundingClientRect(),
      far = Math.hypot(
        Math.max(left - event.clientX, 0, event.clientX - right),
        Math.max(top - event.clientY, 0, event.clientY - bottom),
      );
    if (far < nearest) [best, nearest] = [key, far];
  }
  return best;
}

/** The ring around a mark, the words below it, or above where there is no room, within the map. */
function put(map: HTMLElement, mark: Element, ring: HTMLElement, told: HTMLElement): void {
  const ground = map.getBoundingClientRect(),
    { left, top, width, height, bottom } = mark.getBoundingClientRect(),
    room = 5;
  Object.assign(ring.style, {
    left: `${left - ground.left - room}px`,
    top: `${top - ground.top - room}px`,
    width: `${width + 2 * room}px`,
    height: `${height + 2 * room}px`,
  });
  const [wide, high] = [told.offsetWidth, told.offsetHeight],
    most = map.clientWidth - wide,
    isAbove = bottom + 12 + high > window.innerHeight && top - 12 - high > 0;
  Object.assign(told.style, {
    left: `${Math.max(0, Math.min(most, left - ground.left + width / 2 - wide / 2))}px`,
    top: `${isAbove ? top - ground.top - 12 - high : bottom - ground.top + 12}px`,
  });
}
