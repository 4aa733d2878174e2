//! What holds the heap.

use heapwright_answers::heap::{Cover, Enclosure, Ground, Shape, Wall};

use super::bounded;
use crate::WireError;
use crate::simulation::question::{CoverFile, EnclosureFile, GroundFile, ShapeFile, WallFile};

pub(super) fn enclosure(file: &EnclosureFile) -> Result<Enclosure, WireError> {
    let width_m = bounded("enclosure.width_m", file.width_m, 0.05, 20.0)?;
    let depth_m = file.depth_m.map_or(Ok(width_m), |depth_m| {
        bounded("enclosure.depth_m", depth_m, 0.05, 200.0)
    })?;
    let height_m = bounded("enclosure.height_m", file.height_m, 0.05, 10.0)?;
    let shape = match file.shape.unwrap_or_default() {
        ShapeFile::Box => Shape::Box,
        ShapeFile::Cylinder => Shape::Cylinder,
        ShapeFile::Cone => Shape::Cone,
        ShapeFile::Drum => Shape::Drum,
    };
    let rate = |field: &str, value: Option<f64>, most: f64| {
        value
            .map(|value| bounded(field, value, 0.0, most))
            .transpose()
    };
    Ok(Enclosure {
        shape,
        width_m,
        depth_m,
        height_m,
        wall: match file.wall.unwrap_or_default() {
            WallFile::Open => Wall::Open,
            WallFile::Mesh => Wall::Mesh,
            WallFile::Slatted => Wall::Slatted,
            WallFile::Wood => Wall::Wood,
            WallFile::Plastic => Wall::Plastic,
            WallFile::Metal => Wall::Metal,
            WallFile::Insulated => Wall::Insulated,
        },
        cover: cover(file.cover.unwrap_or_default()),
        ground: match file.ground.unwrap_or_default() {
            GroundFile::Soil => Ground::Soil,
            GroundFile::Paving => Ground::Paving,
        },
        heat_loss_w_per_k: rate(
            "enclosure.heat_loss_w_per_k",
            file.heat_loss_w_per_k,
            10_000.0,
        )?,
        forced_air_kg_per_d: rate(
            "enclosure.forced_air_kg_per_d",
            file.forced_air_kg_per_d,
            100_000.0,
        )?,
    })
}

pub(super) fn cover(file: CoverFile) -> Cover {
    match file {
        CoverFile::None => Cover::None,
        CoverFile::Sheet => Cover::Sheet,
        CoverFile::Lid => Cover::Lid,
        CoverFile::Roof => Cover::Roof,
    }
}
