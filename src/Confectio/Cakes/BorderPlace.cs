namespace Confectio.Cakes;

/// <summary>Where a border runs.</summary>
public enum BorderPlace
{
    /// <summary>Round the foot, against the coated side.</summary>
    Foot,

    /// <summary>On the top along its edge: the middle of the border runs half its width inside the coated edge.</summary>
    TopEdge,
}
