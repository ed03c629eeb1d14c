interface PlaceChoiceProps {
  stations: [string, string][]
  zones: [string, string][]
  place: string
  timeZone: string
}

/** Where new units stand whose building is new: their climate and the time zone of their days. */
export function PlaceChoice({ stations, zones, place, timeZone }: PlaceChoiceProps) {
  return (
    <fieldset className="field">
      <legend className="label">Where do the new buildings stand?</legend>
      <p className="hint">New units of a building that you own already take its climate and time zone instead.</p>
      <label className="label" htmlFor="place">
        The place whose weather is most like theirs
      </label>
      <select id="place" name="place" defaultValue={place}>
        <option value="">Choose</option>
        <optgroup label="Places">
          {stations.map(([id, name]) => (
            <option key={id} value={`station ${id}`}>
              {name}
            </option>
          ))}
        </optgroup>
        <optgroup label="None of these: by climate">
          {zones.map(([zone, name]) => (
            <option key={zone} value={`zone ${zone}`}>
              {name}
            </option>
          ))}
        </optgroup>
      </select>
      <label className="label" htmlFor="time-zone">
        Time zone, where you chose by climate
      </label>
      <input id="time-zone" name="time-zone" type="text" defaultValue={timeZone} placeholder="America/Chicago" />
    </fieldset>
  )
}
