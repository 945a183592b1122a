import type { MetadataRoute } from "next";
import { ICON_NAMES, ICONS } from "@/lib/documents/app-icon";
import { readReader } from "./_ui/preferences/loaders";

/** What makes the app one to install. */
export default async function manifest(): Promise<MetadataRoute.Manifest> {
	const { say, language } = await readReader();
	return {
		id: "/",
		name: say("shell.name"),
		short_name: say("coaching.shortName"),
		description: say("shell.description"),
		lang: language,
		start_url: "/",
		scope: "/",
		display: "standalone",
		background_color: "#151311",
		theme_color: "#151311",
		icons: ICON_NAMES.map((name) => ({
			src: `/icons/${name}`,
			sizes: `${ICONS[name].sizePx}x${ICONS[name].sizePx}`,
			type: "image/png",
			purpose: ICONS[name].isMaskable ? "maskable" : "any",
		})),
		shortcuts: [{ name: say("coaching.title"), url: "/coaching" }],
	};
}
