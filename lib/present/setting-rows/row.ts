/** One statement of a setting, told apart from the others by its key, whatever the order or language. */
export interface SettingRow {
	readonly key: string;
	readonly label: string;
	readonly value: string;
}
