// What was typed last is kept on this device: the job's text with edits not yet in it, at once with
// every key, and its pictures. Where the browser keeps nothing, as in a private window, all works and
// the page says so.
const place = "underlay: the job typed last";

let works = true;

export function recall() {
	try {
		return JSON.parse(localStorage.getItem(place)) ?? null;
	} catch {
		return null;
	}
}

export function remember(what) {
	try {
		localStorage.setItem(place, JSON.stringify(what));
		works = true;
	} catch {
		works = false;
	}
	return works;
}

export const remembers = () => works;

export function forget() {
	try {
		localStorage.removeItem(place);
	} catch {
		// There was nothing to forget.
	}
	return overPictures("readwrite", (store) => store.clear());
}

// overPictures does something with the store of pictures; undefined where there is none.
function overPictures(mode, action) {
	return new Promise((resolve) => {
		let opening;
		try {
			opening = indexedDB.open("underlay", 1);
		} catch {
			resolve(undefined);
			return;
		}
		opening.onupgradeneeded = () => opening.result.createObjectStore("pictures");
		opening.onerror = () => resolve(undefined);
		opening.onsuccess = () => {
			const base = opening.result;
			try {
				const change = base.transaction("pictures", mode);
				const asked = action(change.objectStore("pictures"));
				change.oncomplete = () => {
					base.close();
					resolve(asked.result);
				};
				change.onabort = change.onerror = () => {
					base.close();
					works = false;
					resolve(undefined);
				};
			} catch {
				base.close();
				resolve(undefined);
			}
		};
	});
}

export const rememberPictures = (pictures) => overPictures("readwrite", (store) => store.put(pictures, "all"));

export async function recallPictures() {
	return await overPictures("readonly", (store) => store.get("all")) ?? new Map();
}
