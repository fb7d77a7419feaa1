import { after, byId } from "./dom.js";

// tell announces a sentence once typing has come to rest, for those who do not see the page change.
export const tell = after(700, (text) => {
	byId("live").textContent = text;
});

// tellNow announces what has been done or cannot be done.
export function tellNow(text) {
	byId("live").textContent = text;
}

// alarm announces what is wrong, again only where it is something else than before.
export const alarm = after(700, (text) => {
	if (byId("alarm").textContent !== text) byId("alarm").textContent = text;
});
