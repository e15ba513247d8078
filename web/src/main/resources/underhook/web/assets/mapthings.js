// What the map shows, made from what the server sent: features in the projection of the view.
const { Feature, format, geom, proj } = window.ol;
const json = new format.GeoJSON();

/** Of all turns round the Earth the one of what was drawn first: a day across the 180th meridian is drawn in one piece. */
let first = null;
const near = (lon) => lon + 360 * Math.round(((first ??= lon) - lon) / 360);

export const toView = (lonLat) => proj.fromLonLat([near(lonLat[0]), lonLat[1]]);

/** Bounds that the server said, which run on where they lie across that meridian. */
export const extentOf = ([west, south, east, north]) => {
  const begin = near(west);
  return proj.transformExtent([begin, south, begin + east - west, north], 'EPSG:4326', 'EPSG:3857');
};

/** A shape in degrees as it lies in the view. */
function laid(shape) {
  shape.applyTransform((from, to = from, stride = 2) => {
    for (let i = 0; i < from.length; i += stride) to[i] = near(from[i]);
    return to;
  });
  return shape.transform('EPSG:4326', 'EPSG:3857');
}

export function read(collection) {
  const features = collection ? json.readFeatures(collection) : [];
  for (const feature of features) laid(feature.getGeometry());
  return features;
}

/** What is given as a point and a radius becomes the circle that it is. */
export function rounded(feature) {
  const radiusM = feature.get('radiusM'), shape = feature.getGeometry();
  if (radiusM > 0 && shape.getType() === 'Point') {
    feature.setGeometry(laid(geom.Polygon.circular(proj.toLonLat(shape.getCoordinates()), radiusM, 64)));
  }
  return feature;
}

export function named(place) {
  const name = place.clone();
  name.setId(place.getId());
  return name;
}

/** The name of an area, at its middle: names give way to each other there, areas never do. */
export function titled(area) {
  const shape = area.getGeometry();
  const [x, y] = shape.getType() === 'Polygon' ? shape.getInteriorPoint().getCoordinates() : shape.getClosestPoint(shape.getExtent().slice(0, 2));
  return new Feature({ geometry: new geom.Point([x, y]), title: [area.get('name') ?? area.get('id'), area.get('hours')].filter(Boolean).join(' ') });
}

/** Where along a leg letting the load go is no option, as parts of its line. */
export function stretches(leg) {
  const line = new geom.LineString(leg.path.map(toView));
  return (leg.release?.stretches ?? []).map((stretch) => {
    const parts = [];
    for (let i = 0; i <= 12; i++) parts.push(line.getCoordinateAt(Math.min(1, (stretch.fromM + ((stretch.toM - stretch.fromM) * i) / 12) / leg.distanceM)));
    return new Feature({ geometry: new geom.LineString(parts), use: stretch.use, what: (stretch.what ?? []).join(', ') });
  });
}

export function along(path, part) {
  const line = new geom.LineString(path.map(toView));
  return proj.toLonLat(line.getCoordinateAt(part));
}
