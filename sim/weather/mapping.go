package weather

type Mapping struct{}
