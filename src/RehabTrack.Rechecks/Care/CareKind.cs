namespace RehabTrack.Rechecks.Care;

/// <summary>Treatments, medicines and signs that are kept of a horse.</summary>
public enum CareKind
{
    /// <summary>Shock wave.</summary>
    ShockWave,

    /// <summary>Platelet-rich plasma into the lesion.</summary>
    PlateletRichPlasma,

    /// <summary>Bone marrow concentrate into the lesion.</summary>
    MarrowConcentrate,

    /// <summary>Stem cells into the lesion.</summary>
    StemCells,

    /// <summary>Another injection into the lesion.</summary>
    OtherInjection,

    /// <summary>A nerve was cut.</summary>
    Neurectomy,

    /// <summary>Another operation.</summary>
    OtherSurgery,

    /// <summary>Farriery.</summary>
    Shoeing,

    /// <summary>Another treatment.</summary>
    OtherTreatment,

    /// <summary>An anti-inflammatory.</summary>
    AntiInflammatory,

    /// <summary>A corticosteroid.</summary>
    Corticosteroid,

    /// <summary>Another medicine against pain.</summary>
    PainRelief,

    /// <summary>Another medicine.</summary>
    OtherMedicine,

    /// <summary>Lameness.</summary>
    Lameness,

    /// <summary>Heat.</summary>
    Heat,

    /// <summary>Swelling.</summary>
    Swelling,

    /// <summary>Pain on palpation.</summary>
    Pain,

    /// <summary>Another sign.</summary>
    OtherSign,
}
