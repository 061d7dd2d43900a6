namespace Waywright.Tests;

public sealed class PhiloxTests
{
    // Random123, tests/kat_vectors, the three lines of 'philox4x32 10': counter, key, block (read in copies of that file).
    [Theory]
    [InlineData(0x00000000, 0x00000000, 0x00000000, 0x00000000, 0x00000000, 0x00000000, 0x6627e8d5, 0xe169c58d, 0xbc57ac4c, 0x9b00dbd8)]
    [InlineData(0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff, 0xffffffff, 0x408f276d, 0x41c83b0e, 0xa20bc7c6, 0x6d5451fd)]
    [InlineData(0x243f6a88, 0x85a308d3, 0x13198a2e, 0x03707344, 0xa4093822, 0x299f31d0, 0xd16cfe09, 0x94fdcceb, 0x5001e420, 0x24126ea1)]
    public void The_known_answers_come_out(uint a, uint b, uint c, uint d, uint keyA, uint keyB, uint blockA, uint blockB, uint blockC, uint blockD)
        => Assert.Equal((blockA, blockB, blockC, blockD), Philox.Block(a, b, c, d, keyA, keyB));

    // The second counter carries into its second word within the run.
    [Theory]
    [InlineData(0UL)]
    [InlineData(0xFFFFFFFAUL)]
    [InlineData(0xFFFFFFFFFFFFFFFEUL)]
    public void Many_blocks_at_a_time_are_the_same_blocks(ulong firstBlock)
    {
        var together = new ulong[70];
        var singly = new ulong[70];
        Philox.Fill(firstBlock, 5, 6, 0x299f31d0a4093822, together);
        Philox.FillSingly(firstBlock, 5, 6, 0x299f31d0a4093822, singly);
        Assert.Equal(singly, together);
    }
}
